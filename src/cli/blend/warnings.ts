import { type Fault, warning } from "../../core/fault.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Blend } from "../../core/recipe/blend/blend.js";
import type { MixDye } from "../../core/recipe/mixture/mix-dye.js";
import { isStrongest } from "../../core/recipe/solve/solve-set.js";
import type { MixTrial } from "../../core/recipe/trial/fit-trials.js";
import { unlikelyTrial } from "../../core/recipe/trial/unlikely-trial.js";

/** Dyes of the recipes that were measured at unlike temperatures. */
export function temperatureWarnings(made: Blend, dyes: readonly MixDye[]): Fault[] {
  if (!made.unlikeTemperatures) return [];
  const told = new Set(made.recipes.flatMap((recipe) => recipe.dyes.map(({ dye }) => dye)));
  const said = dyes
    .filter(({ name }) => told.has(name))
    .map(({ model, name }) => `${name} at ${model.dye.celsius} °C`);
  return [
    warning(
      "unlike-temperatures",
      ["dyes"],
      `the dyes of these recipes are dyed at unlike temperatures (${said.join(", ")}): a recipe is for the lowest of its dyes', and what the others do there is computed`,
      "trust a trial dip at that temperature more than the first recipe, or mix dyes of one temperature with --dyes",
    ),
  ];
}

/** A dip longer than any swatch of a dye in the recipe: nobody has seen the colour that it gives. */
export function timeWarnings({ first }: Blend): Fault[] {
  if (first === undefined) return [];
  const { dip, dyes } = first.mixture;
  const beyond = dyes.filter(({ model }) => dip.seconds > model.uptake.referenceSeconds);
  if (beyond.length === 0) return [];
  const said = beyond.map(({ name, model }) => `${name} ${duration(model.uptake.referenceSeconds)}`);
  return [
    warning(
      "time-beyond-swatches",
      ["--time"],
      `the dip of ${duration(dip.seconds)} is longer than the longest swatch (${said.join(", ")}): its colour is extrapolated`,
      "take a shorter --time, or dip a swatch as long",
    ),
  ];
}

/** A colour that has no recipe, or that the nearest recipe does not reach. */
export function reachWarnings(made: Blend, tolerance: number): Fault[] {
  if (made.recipes.length === 0)
    return [
      warning(
        "no-recipe",
        ["--target"],
        "no recipe was found: these dyes bring the bare base no nearer to the colour, or too little of each would be in the bath",
        "take other dyes, or a colour that is farther from the bare base",
      ),
    ];
  if (made.nearest === null || made.nearest <= tolerance) return [];
  const longer = made.first !== undefined && isStrongest(made.first.strengths) ? "a longer --time, " : "";
  return [
    warning(
      "colour-out-of-reach",
      ["--target"],
      `the nearest colour of these dyes is ${made.nearest.toFixed(1)} away, ${made.nearestBecause}`,
      `take ${longer}another dye into the set, or a colour that they reach`,
    ),
  ];
}

/** Trials whose reading is too far from what the swatches predict to be believed. */
export const trialWarnings = (trials: readonly MixTrial[], said: readonly string[]): Fault[] =>
  trials.flatMap((trial, i) => {
    const unlikely = unlikelyTrial(trial);
    if (unlikely === undefined) return [];
    const { predicted, deltaE00, doubt95 } = unlikely;
    return [
      warning(
        "trial-unlikely",
        ["--trial"],
        `${said[i]} is ${deltaE00.toFixed(1)} CIEDE2000 from what the swatches predict of it, ${predicted.map((value) => value.toFixed(1)).join(",")}; in 95 of 100 cases it is within ${doubt95.toFixed(1)}`,
        "check its amounts, its time and its reading",
      ),
    ];
  });
