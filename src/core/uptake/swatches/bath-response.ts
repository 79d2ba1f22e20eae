import { solveLeastSquares, unitStandardErrors } from "../../maths/least-squares/linear-least-squares.js";
import { kelvinAtZeroCelsius } from "../../quantity/kelvin.js";
import { gasConstantJPerMolK } from "../law/arrhenius.js";

/** A figure of a dye that its swatches tell, with its standard error. */
export interface Measured {
  readonly value: number;
  readonly standardError: number;
}

/** How a dye answers to a weaker or cooler bath, as far as its swatches tell. */
export interface BathResponse {
  /** p of t(s) = t(1) s^-p. */
  readonly strengthExponent?: Measured;
  readonly activationEnergyJPerMol?: Measured;
}

/** A dip in another bath than the fresh one, beside the time that gives its colour in the fresh one. */
export interface ApartDip {
  readonly seconds: number;
  readonly strength: number;
  readonly celsius: number;
  readonly freshSeconds: number;
  /** Of ln(seconds/freshSeconds), one standard deviation. */
  readonly deviation: number;
}

/** What an exponent, and an activation energy [J/mol], can be. */
export const exponentRange = [0.5, 4] as const;
const energyRange = [0, 150e3] as const;

export const within = (value: number, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, value));

/**
 * The strength exponent and the activation energy that dips in other baths tell, by weighted least squares of
 * ln(t/t_fresh) = -p ln s + (Ea/R) (1/T - 1/T_ref); p kept between 0.5 and 4, Ea between 0 and 150 kJ/mol. What no dip
 * tells apart is left out. An energy that is given takes its part out first.
 * @param referenceCelsius T_ref, the temperature of the fresh bath [°C]
 * @example
 * bathResponse([{ seconds: 120, strength: 0.5, celsius: 80, freshSeconds: 60, deviation: 0.05 }], 80, 75000).strengthExponent.value // => 1
 */
export function bathResponse(
  dips: readonly ApartDip[],
  referenceCelsius: number,
  assumedEnergyJPerMol: number,
  energyGiven = false,
): BathResponse {
  const rows = dips.map(({ seconds, strength, celsius, freshSeconds, deviation }) => ({
    late: Math.log(seconds / freshSeconds),
    weak: -Math.log(strength),
    cold:
      (1 / (celsius + kelvinAtZeroCelsius) - 1 / (referenceCelsius + kelvinAtZeroCelsius)) /
      gasConstantJPerMolK,
    deviation,
  }));
  const tellsEnergy = !energyGiven && rows.some(({ cold }) => Math.abs(cold) > 1e-12);
  const tellsExponent = rows.some(({ weak }) => Math.abs(weak) > 1e-12);
  const both = tellsEnergy && tellsExponent ? solved(rows, ["weak", "cold"]) : undefined;
  if (both !== undefined)
    return {
      strengthExponent: kept(both[0]!, exponentRange),
      activationEnergyJPerMol: kept(both[1]!, energyRange),
    };
  const warm = rows.map((row) => ({ ...row, late: row.late - assumedEnergyJPerMol * row.cold }));
  const exponent = tellsExponent ? solved(warm, ["weak"])?.[0] : undefined;
  const energy = tellsEnergy && !tellsExponent ? solved(rows, ["cold"])?.[0] : undefined;
  return {
    ...(exponent === undefined ? {} : { strengthExponent: kept(exponent, exponentRange) }),
    ...(energy === undefined ? {} : { activationEnergyJPerMol: kept(energy, energyRange) }),
  };
}

type Row = {
  readonly late: number;
  readonly weak: number;
  readonly cold: number;
  readonly deviation: number;
};

/** Weighted least squares over those columns; undefined where they cannot be told apart. */
function solved(rows: readonly Row[], columns: readonly ("weak" | "cold")[]): Measured[] | undefined {
  // J/mol are 1e5 times an exponent: columns of like size keep the solution exact.
  const size = { weak: 1, cold: 1e-5 } as const;
  const found = solveLeastSquares(
    rows.map((row) => columns.map((column) => row[column] / size[column] / row.deviation)),
    rows.map(({ late, deviation }) => late / deviation),
  );
  if (found === undefined) return undefined;
  const errors = unitStandardErrors(found.r);
  return columns.map((column, i) => ({
    value: found.x[i]! / size[column],
    standardError: errors[i]! / size[column],
  }));
}

const kept = ({ value, standardError }: Measured, range: readonly [number, number]): Measured => ({
  value: within(value, range),
  standardError,
});
