import { largest, smallest } from "../../core/maths/extent.js";
import type { BathWear, SteadyTopUpFigures } from "../../core/plan/wear-model.js";
import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { percent, pour } from "../words/amounts.js";
import { dyeText, measuredDye } from "../words/dye.js";

/** The range of some amounts; one amount where its ends are said alike. */
function span(values: readonly number[], say: (value: number) => string): string {
  const [low, high] = [say(smallest(values)), say(largest(values))];
  return low === high ? low : `${low} to ${high}`;
}

/** What goes into a litre of the liquor, measured cold; the dilution of a powder says it already. */
const litreOf = (steady: SteadyTopUpFigures): string =>
  "gramsPerL" in steady
    ? ""
    : `; a litre is ${dyeText({ concentrateMl: 1000 * (steady.fraction ?? 1) })} and ${pour(1000 * (1 - (steady.fraction ?? 1)))} of water`;

/** The liquor that holds a bath steady, and how much of it a load takes. */
export function steadyText(steady: SteadyTopUpFigures): string {
  const { strength, dilution, pours } = steady;
  if (dilution === null)
    return "No liquor holds this bath steady: it would have to be stronger than the concentrate.";
  const kind = kindWith(pours[0]!, "amount");
  const liquor = span(
    pours.map(({ liquorMl }) => liquorMl),
    pour,
  );
  const dye = span(
    pours.map((one) => figureOfDye(one, "amount")),
    (amount) => measuredDye(kind, amount),
  );
  return `Filled to the mark after each load with liquor of ${dilution}, the bath stays as it is: ${liquor} a load, cold, with ${dye} of dye in it. The liquor has ${percent(strength)} of a fresh bath's strength${litreOf(steady)}.`;
}

/** Why no steady liquor is given for a mixed bath; null for another. */
export const steadyOfMix = ({ dyeBalance }: BathWear): string | null =>
  dyeBalance.mix === undefined
    ? null
    : "No liquor is worked out that holds a mix steady: each of its dyes leaves it at its own rate. With topUp: strength each is topped up by itself.";
