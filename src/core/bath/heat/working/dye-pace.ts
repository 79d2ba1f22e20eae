import { rateFactor } from "../../../uptake/law/arrhenius.js";
import { lookUp, tabulate } from "./celsius-table.js";
import type { Pace } from "./flow.js";

/**
 * How fast a dye goes in at a temperature, against that at the bath's own: `rateFactor`, tabulated by 0.5 K from 0 to
 * 100 °C.
 *
 * Exactly 1 at the bath's own temperature; elsewhere within 2e-8 for 75 kJ/mol from 15 °C on, 5e-7 for 150 kJ/mol.
 * @source codata2018 gas constant
 * @example
 * dyePace(75000, 80)(70) // => 0.47503755
 * dyePace(75000, 77.3)(77.3) // => 1
 */
export function dyePace(activationEnergyJPerMol: number, celsius: number): Pace {
  const table = tabulate(
    (at) => rateFactor({ activationEnergyJPerMol, celsius: at, referenceCelsius: celsius }),
    // The bath's own temperature is where two cells meet.
    { fromCelsius: celsius - Math.ceil(celsius), toCelsius: 100, cellsPerKelvin: 2 },
  );
  return (at) => lookUp(table, at);
}
