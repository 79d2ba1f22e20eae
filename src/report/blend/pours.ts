import { figureOfDye } from "../../core/quantity/dye/dye-figures.js";
import type { BlendRecipe, Pour } from "../../core/recipe/blend/described.js";
import type { Block } from "../report.js";
import type { Cell, Column } from "../table.js";
import { trimmed } from "../words/digits.js";
import { fineDye, fineMl } from "../words/fine-amount.js";

const amount = (key: string, title: string): Column => ({ key, title, align: "right", tone: "strong" });

/** A jar and what is filled, side by side; the jar alone where nothing else is. */
export function pourBlock(recipe: BlendRecipe, vessel: string | null): Block {
  const pours: readonly Pour[] = vessel === null ? [recipe] : [recipe.jar, recipe];
  const titles = ["a jar", ...(vessel === null ? [] : [vessel])];
  const rows: Cell[][] = [
    ["water", ...pours.map(({ waterMl }) => fineMl(waterMl))],
    ...recipe.dyes.map(({ dye }, i) => [dye, ...pours.map(({ dyes }) => fineDye(dyes[i]!))]),
    ["together", ...pours.map(({ coldMl }) => fineMl(coldMl))],
  ];
  return {
    kind: "table",
    table: {
      columns: [
        { key: "what", title: "pour, measured cold" },
        ...titles.map((title) => amount(title, title)),
      ],
      rows,
    },
  };
}

/** Least that a syringe measures well [mL]. */
const least = 0.5;

/** What is too little to measure for a jar, and how to thin it first. */
export const thinFirst = ({ jar }: BlendRecipe): readonly string[] =>
  jar.dyes
    .filter((dye) => "concentrateMl" in dye && figureOfDye(dye, "amount") < least)
    .map(
      (dye) =>
        `${fineDye(dye)} of ${dye.dye} is hard to measure: thin 1 mL of it with 9 mL of water and pour ${fineMl(10 * figureOfDye(dye, "amount"))} of that into the jar.`,
    );

/** A recipe in one cell: "straw 12.5 mL, lagoon 4.21 mL". */
export const recipeText = (dyes: BlendRecipe["dyes"]): string =>
  dyes.map((dye) => `${dye.dye} ${fineDye(dye)}`).join(", ");

/** The trials to type once the jar's colour is read: those before it, and this one; a shell reads them as one line. */
export const trialLines = ({ jar, seconds }: BlendRecipe, typed: readonly string[]): readonly string[] =>
  [...typed, `${recipeText(jar.dyes)}, water ${fineMl(jar.waterMl)}, ${trimmed(seconds, 1)} s: L,a,b`].map(
    (text, i) => `--trial '${text}'${i < typed.length ? " \\" : ""}`,
  );
