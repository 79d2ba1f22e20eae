import { uptakeLaws } from "../../core/uptake/law/laws.js";
import type { Known, ShadeDescription } from "../../core/uptake/shade/describe-shade.js";

const from = {
  given: "as given",
  fitted: "fitted to the swatches",
  assumed: "assumed, since one swatch does not tell it",
} as const;

/** The uptake law of a curve, and how well it is checked. */
export function lawText(shade: ShadeDescription): string {
  const rate = `${shade.ratePerSecond.toPrecision(3)} /s`;
  const how =
    !uptakeLaws[shade.law].plateau && shade.rateFrom === "fitted"
      ? "(which has no rate of its own)"
      : `at ${rate}, ${from[shade.rateFrom]}`;
  const check = shade.leaveOneOut
    ? ` Leave-one-out prediction error: ${shade.leaveOneOut.median.toFixed(1)} CIEDE2000 (median; ${shade.leaveOneOut.max.toFixed(1)} at worst).`
    : " With two swatches nothing checks the law, and colours between and beyond them are uncertain; dip two more.";
  return `Uptake: ${shade.law} law ${how}.${check}`;
}

const figure = ({ value, standardError, measured }: Known, digits: number, unit: string): string =>
  measured
    ? `${value.toFixed(digits)}${unit} \u00b1 ${standardError!.toFixed(digits)} (standard error), measured by its swatches`
    : `${value.toFixed(digits)}${unit}\u2020, assumed`;

/** How times grow in a weaker and a cooler bath, as measured or assumed. */
export const responseText = ({ strengthExponent, activationEnergyKJPerMol }: ShadeDescription): string =>
  `A bath of strength s takes s^-p times as long: p = ${figure(strengthExponent, 2, "")}${strengthExponent.measured ? "" : " (1 to 2)"}. Activation energy ${figure(activationEnergyKJPerMol, 0, " kJ/mol")}.`;
