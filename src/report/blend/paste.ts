import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { type DyeKind, dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { inYaml } from "../../core/quantity/text/in-yaml.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import type { BlendRecipe } from "../../core/recipe/blend/described.js";
import type { Poured } from "../../core/recipe/solve/amounts.js";
import { trimmed } from "../words/digits.js";
import type { BlendFacts } from "./facts.js";

interface Part {
  readonly dye: string;
  readonly kind: DyeKind;
  readonly amount: number;
}

/** "{ straw: 76.8 mL/L, lagoon: 20 mL/L }", in a litre of the bath. */
const mixText = (parts: readonly Part[], coldMl: number): string =>
  `{ ${parts.map(({ dye, kind, amount }) => `${inYaml(dye)}: ${shortNumber((1000 * amount) / coldMl, 4)} ${dyeKinds[kind].unit}/L`).join(", ")} }`;

const labText = (lab: readonly number[]): string => `[${lab.map((value) => trimmed(value, 2)).join(", ")}]`;

const triedParts = ({ dyes }: Poured): Part[] => dyes.map(({ name, ...rest }) => ({ dye: name, ...rest }));

/** A name for the batch file: the shade's, where the target is one. */
const nameOf = (name: string): string => (inYaml(name) === name ? name : "mixed");

/** The trials that a batch file can keep under the mix: those without a dye that the recipe does not have. */
const keptTrials = (trials: BlendFacts["trials"], recipe: BlendRecipe): BlendFacts["trials"] =>
  trials.filter(({ dyes }) => dyes.every(({ name }) => recipe.dyes.some(({ dye }) => dye === name)));

/** What plan does not know of the trials, since the lines leave some out. */
export function leftOutText({ trials }: BlendFacts, recipe: BlendRecipe): string {
  const count = trials.length - keptTrials(trials, recipe).length;
  if (count === 0) return "";
  return ` ${count === 1 ? "1 trial is" : `${count} trials are`} left out, with a dye that this mix does not have: plan predicts the colour without ${count === 1 ? "it" : "them"}, so keep the lines of --trial too.`;
}

/** The recipe and its trials as a batch file has them; none where one dye does, or liquids and powders are mixed. */
export function pasteLines(
  { name, blend, base, trials }: BlendFacts,
  recipe: BlendRecipe,
): readonly string[] {
  const parts = recipe.dyes.map(
    (dye): Part => ({ dye: dye.dye, kind: kindWith(dye, "amount"), amount: figureOfDye(dye, "amount") }),
  );
  if (parts.length < 2 || new Set(parts.map(({ kind }) => kind)).size > 1) return [];
  const own = nameOf(name);
  const kept = keptTrials(trials, recipe);
  return [
    "dyes:",
    `  ${own}:`,
    `    mix: ${mixText(parts, recipe.coldMl)}`,
    ...(base === null ? [] : [`    base: ${inYaml(base)}`]),
    ...(kept.length === 0 ? [] : ["    trials:"]),
    ...kept.map(
      ({ seconds, lab, poured }) =>
        `      - { time: ${trimmed(seconds, 1)} s, lab: ${labText(lab)}, mix: ${mixText(triedParts(poured), poured.coldMl)} }`,
    ),
    "shades:",
    `  ${own}: { dye: ${own}, lab: ${labText(blend.target)} }`,
  ];
}
