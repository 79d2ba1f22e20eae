import { kelvinAtZeroCelsius } from "../../quantity/kelvin.js";
/** Molar gas constant [J/(mol K)], exact. @source codata2018 table XXXI */
export const gasConstantJPerMolK = 8.314462618;

/**
 * How many times faster the dye goes in at a temperature than at the reference temperature.
 *
 * k(T)/k_ref = exp(-Ea/R (1/T - 1/T_ref)); Ea activation energy [J/mol], T and T_ref [K], given here in °C.
 * Published energies for acid dyes in nylon lie between 45 and 117 kJ/mol and were measured between 40 and
 * 102 °C; outside that range, and across the glass transition of the polymer, it is an extrapolation.
 * @source codata2018 gas constant
 * @example
 * rateFactor({ activationEnergyJPerMol: 75000, celsius: 70, referenceCelsius: 80 }) // => 0.475037545406
 */
export function rateFactor(at: {
  readonly activationEnergyJPerMol: number;
  readonly celsius: number;
  readonly referenceCelsius: number;
}): number {
  const kelvin = at.celsius + kelvinAtZeroCelsius;
  const referenceKelvin = at.referenceCelsius + kelvinAtZeroCelsius;
  return Math.exp((-at.activationEnergyJPerMol / gasConstantJPerMolK) * (1 / kelvin - 1 / referenceKelvin));
}

/**
 * Temperature [°C] at which the rate is a factor times that at the reference temperature: `rateFactor` solved
 * for the temperature, 1/T = 1/T_ref - R/Ea ln(factor).
 * @source codata2018 gas constant
 * @example
 * celsiusForFactor({ activationEnergyJPerMol: 75000, referenceCelsius: 80, factor: 2.02054389 }) // => 90.000000
 */
export function celsiusForFactor(at: {
  readonly activationEnergyJPerMol: number;
  readonly referenceCelsius: number;
  readonly factor: number;
}): number {
  const inverse =
    1 / (at.referenceCelsius + kelvinAtZeroCelsius) -
    (gasConstantJPerMolK / at.activationEnergyJPerMol) * Math.log(at.factor);
  return 1 / inverse - kelvinAtZeroCelsius;
}
