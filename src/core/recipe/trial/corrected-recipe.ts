import type { Correction } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { findRecipes, type Recipe, type RecipeWish, recipeOf, trace } from "../solve/find-recipes.js";
import { ranked } from "../solve/rank.js";
import type { MixTrial } from "./fit-trials.js";

/** One dye more is tried where the corrected recipe is off by more than this, and taken where it gains so much. */
const offBy = 0.25;
const gains = 0.15;
/** Where even that is off by more than this, other dyes are looked for, and taken where they gain as much. */
const tooFar = 1;

/**
 * The recipe of the tried dyes as their trials correct it, as near to what was tried as it can be; with one dye more only
 * where that leaves over 0.25 and the dye gains 0.15 (CIEDE2000); of all dyes where those are off by over 1. Undefined where there is no recipe.
 */
export function correctedRecipe(
  { dyes, strengths }: Pick<MixTrial, "dyes" | "strengths">,
  others: readonly MixDye[],
  wish: RecipeWish,
  correction: Correction,
): Recipe | undefined {
  const same = recipeOf(dyes, wish, correction, strengths);
  if (same !== undefined && same.deltaE00 <= offBy) return same;
  const found = others.flatMap((other) => {
    const recipe = recipeOf([...dyes, other], wish, correction, [...strengths, trace]);
    return recipe === undefined ? [] : [recipe];
  });
  const [best] = found.sort((one, other) => one.deltaE00 - other.deltaE00);
  const near = best !== undefined && best.deltaE00 <= missOf(same) - gains ? best : same;
  if (missOf(near) <= tooFar) return near;
  const [anew] = ranked(findRecipes([...dyes, ...others], wish, correction), () => undefined, 1);
  return anew !== undefined && anew.recipe.deltaE00 <= missOf(near) - tooFar ? anew.recipe : near;
}

const missOf = (recipe: Recipe | undefined): number => recipe?.deltaE00 ?? Number.POSITIVE_INFINITY;
