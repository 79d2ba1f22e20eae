import type { PlanLife } from "../../core/plan/plan-model.js";
import type { BathWear } from "../../core/plan/wear-model.js";
import { dyeUnitInWords, figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { pour, volumeSaid } from "../words/amounts.js";
import { mark } from "../words/assumed.js";
import { decimals, significant, trimmed } from "../words/digits.js";
import { lifeEnds } from "../words/life-ends.js";

/** The life under the bath's own rule. */
export const ownLife = ({ lives, topUpRule }: BathWear): PlanLife =>
  lives.find(({ rule }) => rule === topUpRule)!;

const count = (number: number, one: string): string => `${number} ${one}${number === 1 ? "" : "s"}`;

function refreshRate(life: PlanLife): string {
  const kind = kindWith(life, "perPart");
  const [perPart, perDm2] = [figureOfDye(life, "perPart"), figureOfDye(life, "perDm2")];
  return perPart === null || perDm2 === null
    ? ""
    : ` It takes ${significant(perPart, 2)} ${dyeUnitInWords(kind)} a part, ${significant(perDm2, 2)} ${dyeKinds[kind].unit} a dm2.`;
}

/** Above this strength the sentence says that the bath grows stronger, and why [-]. Common practice, no source. */
const strong = 1.1;

/** What is in the tank towards the end of the life, and what makes it so. */
function endState({ trace }: BathWear): string {
  const last = trace.at(-1);
  if (last === undefined) return "";
  const grows =
    last.strength > strong ? ": water evaporates and dye stays, which topUp: strength makes up for" : "";
  return ` Before its last load it holds ${pour(1000 * last.volumeL)} at ${decimals(100 * last.strength, 0)} % strength${grows}.`;
}

/** How long a fresh bath lasts under its own rule, what ends it, what it takes, and what is left then. */
export function lifeSentence(bath: BathWear): string {
  const { volumeL, topUpRule, after, restsOnAssumed } = bath;
  const life = ownLife(bath);
  const { loads, parts, areaDm2, days, endedBy } = life;
  const m = mark(restsOnAssumed);
  const dumped = after === "dump" ? " (if it were kept; this batch dumps it)" : "";
  const fresh = `A fresh bath of ${volumeSaid(volumeL)} under topUp: ${topUpRule}`;
  const work = `${count(loads, "load")} of this work, ${count(parts, "part")}, ${trimmed(areaDm2 / 100, 1)} m2`;
  if (endedBy === "load-limit")
    return `${fresh} is counted to ${work}${dumped}: dye alone does not end it; dirt, hardness and breakdown do.${refreshRate(life)}${endState(bath)}${m}`;
  if (loads === 0)
    return `${fresh} does not last for one load of this work: ${lifeEnds[endedBy].sentence}.${m}`;
  const inDays = days === null || days === 0 ? "" : `, ${trimmed(days, 1)} days`;
  return `${fresh} lasts ${work}${inDays}${dumped}; then ${lifeEnds[endedBy].sentence}.${refreshRate(life)}${endState(bath)}${m}`;
}
