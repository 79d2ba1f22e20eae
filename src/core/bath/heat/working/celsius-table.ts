/** A function of temperature as cubic pieces: four coefficients a cell, from the first temperature up. */
export interface CelsiusTable {
  readonly fromCelsius: number;
  readonly cellsPerKelvin: number;
  readonly lastCell: number;
  readonly coefficients: Float64Array;
}

/** Half the distance [K] over which a slope is taken. */
const SLOPE_KELVIN = 1e-3;

/**
 * Tabulates a smooth function of temperature: in each cell the cubic that has its values and slopes at both ends.
 *
 * Off by h⁴/384 of the fourth derivative at most, h width of a cell [K]: for what grows e-fold in 14 K, as rates
 * do, 7e-8 of itself with cells of 1 K. The ends of all cells are exact.
 * @example
 * lookUp(tabulate((celsius) => celsius ** 3, { fromCelsius: 0, toCelsius: 100, cellsPerKelvin: 1 }), 41.5) // => 71473.375
 */
export function tabulate(
  of: (celsius: number) => number,
  range: { readonly fromCelsius: number; readonly toCelsius: number; readonly cellsPerKelvin: number },
): CelsiusTable {
  const { fromCelsius, toCelsius, cellsPerKelvin } = range;
  const cells = Math.ceil((toCelsius - fromCelsius) * cellsPerKelvin);
  const at = (i: number): number => fromCelsius + i / cellsPerKelvin;
  const rise = (i: number): number =>
    (of(at(i) + SLOPE_KELVIN) - of(at(i) - SLOPE_KELVIN)) / (2 * SLOPE_KELVIN * cellsPerKelvin);
  const coefficients = new Float64Array(4 * cells);
  let [value, slope] = [of(at(0)), rise(0)];
  for (let i = 0; i < cells; i++) {
    const [nextValue, nextSlope] = [of(at(i + 1)), rise(i + 1)];
    const gain = nextValue - value;
    coefficients.set([value, slope, 3 * gain - 2 * slope - nextSlope, slope + nextSlope - 2 * gain], 4 * i);
    [value, slope] = [nextValue, nextSlope];
  }
  return { fromCelsius, cellsPerKelvin, lastCell: cells - 1, coefficients };
}

/** The tabulated value; beyond the table its first and last cell go on. */
export function lookUp(table: CelsiusTable, celsius: number): number {
  const place = (celsius - table.fromCelsius) * table.cellsPerKelvin;
  const cell = place > table.lastCell ? table.lastCell : place > 0 ? place | 0 : 0;
  const x = place - cell;
  const c = table.coefficients;
  const i = 4 * cell;
  return c[i]! + x * (c[i + 1]! + x * (c[i + 2]! + x * c[i + 3]!));
}
