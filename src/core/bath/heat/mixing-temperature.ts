import { waterDensityKgM3 } from "../water.js";
import { sensibleHeatKj } from "./heating.js";

/** What goes into a mixture: its heat capacity m c and its temperature. */
export interface WarmBody {
  readonly jPerK: number;
  readonly celsius: number;
}

/**
 * Temperature [°C] of two bodies that are brought together and lose nothing: (C₁ T₁ + C₂ T₂)/(C₁ + C₂), the method of
 * mixtures.
 *
 * C heat capacity m c [J/K], constant over the range; T temperature [°C]. Valid where nothing melts, boils or reacts.
 * A second body without heat capacity leaves the first's temperature as it is, to the last digit.
 * @source chemistry2eCalorimetry
 * @example
 * mixedCelsius({ jPerK: 24407.7, celsius: 80 }, { jPerK: 476, celsius: 20 }) // => 78.8523
 */
export const mixedCelsius = (first: WarmBody, second: WarmBody): number =>
  second.jPerK > 0
    ? first.celsius + (second.jPerK / (first.jPerK + second.jPerK)) * (second.celsius - first.celsius)
    : first.celsius;

/**
 * Heat that a hot litre of liquor takes per kelvin [J/(L K)]: ρ(T) c, c = 4.186 kJ/(kg K), as of water.
 *
 * T temperature [°C] at which the litre is measured. Valid from 0 to 100 °C.
 * @source kell1975 equation 16
 * @example
 * liquorJPerLK(80) // => 4067.95
 */
export const liquorJPerLK = (celsius: number): number =>
  1000 * sensibleHeatKj(waterDensityKgM3(celsius) / 1000, 1);
