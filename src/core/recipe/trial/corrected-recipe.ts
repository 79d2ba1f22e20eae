import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import type { Correction } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { type Tried, triedDoubt95 } from "../solve/doubt.js";
import { findRecipes, type Recipe, type RecipeWish, recipeOf, trace } from "../solve/find-recipes.js";
import { type MixTrial, strengthsByName } from "./fit-trials.js";

/** One dye more is tried where the corrected recipe is off by more than this, and taken where it gains so much. */
const offBy = 0.25;
const gains = 0.15;
/** Where even that is off by more than this, other dyes are looked for, and taken where they gain as much. */
const tooFar = 1;

/** What a recipe leaves, and what is not known of it so far from the trials, as one difference [CIEDE2000]. */
function expected({ mixture, strengths, deltaE00 }: Recipe, trials: readonly Tried[]): number {
  return Math.hypot(deltaE00, triedDoubt95(mixture, strengths, trials) / halfWidth95);
}

/**
 * The recipe of the last trial's dyes as all trials correct it, as near to what was tried as it can be; with one dye less
 * where that does, with one more only where over 0.25 is left and the dye gains 0.15 (CIEDE2000); of all dyes where those
 * are off by over 1. Of these the one whose difference and doubt together are least: far from what was tried little is
 * known. Undefined where there is no recipe.
 */
export function correctedRecipe(
  trials: readonly MixTrial[],
  all: readonly MixDye[],
  wish: RecipeWish,
  correction: Correction,
): Recipe | undefined {
  const { dyes, strengths } = trials.at(-1)!;
  const tried = trials.map(strengthsByName);
  const solve = (set: readonly MixDye[], start: readonly number[]): Recipe[] => {
    const recipe = recipeOf(set, wish, correction, start);
    return recipe === undefined ? [] : [recipe];
  };
  const fewer = dyes.flatMap((_, i) => solve(dyes.toSpliced(i, 1), strengths.toSpliced(i, 1)));
  const candidates = [...solve(dyes, strengths), ...fewer];
  const least = Math.min(...candidates.map(({ deltaE00 }) => deltaE00));
  if (least > offBy)
    candidates.push(
      ...all
        .filter(({ name }) => !dyes.some((dye) => dye.name === name))
        .flatMap((other) => solve([...dyes, other], [...strengths, trace]))
        .filter(({ deltaE00 }) => deltaE00 <= least - gains),
    );
  const near = leastExpected(candidates, tried);
  if (near !== undefined && near.deltaE00 <= tooFar) return near;
  const most = near === undefined ? Number.POSITIVE_INFINITY : near.deltaE00 - tooFar;
  const anew = findRecipes(all, wish, correction).filter(({ deltaE00 }) => deltaE00 <= most);
  return leastExpected(anew, tried) ?? near;
}

const leastExpected = (recipes: readonly Recipe[], trials: readonly Tried[]): Recipe | undefined =>
  recipes
    .map((recipe) => ({ recipe, size: expected(recipe, trials) }))
    .sort((one, other) => one.size - other.size)[0]?.recipe;
