import { ciede2000 } from "../../../src/core/colour/difference/ciede2000.js";
import { type MixDye, mixDyes } from "../../../src/core/recipe/mixture/mix-dye.js";
import { pouredFor } from "../../../src/core/recipe/solve/amounts.js";
import { firstDoubt95, triedDoubt95 } from "../../../src/core/recipe/solve/doubt.js";
import { findRecipes, type Recipe, type RecipeWish } from "../../../src/core/recipe/solve/find-recipes.js";
import { ranked } from "../../../src/core/recipe/solve/rank.js";
import { correctedRecipe } from "../../../src/core/recipe/trial/corrected-recipe.js";
import { fitTrials, type MixTrial, strengthsByName } from "../../../src/core/recipe/trial/fit-trials.js";
import { dyeModel } from "../../../src/core/uptake/shade/dye-model.js";
import { handling } from "../plan/sample.js";
import { seeded } from "../uptake/shade/invented-dyes.js";
import { asWritten, type Palette, palette, type ReadBy, readLab } from "./competing-dyes.js";

/** One try over all targets. */
export interface Tries {
  /** CIEDE2000 between the dyed part and the target, sorted. */
  readonly missed: readonly number[];
  /** Share of the tries whose colour lies within the stated doubt of what was foretold. */
  readonly held: number;
}

const tries = 3;

/** The dyes of a palette as their models. */
function mixedFrom(truth: Palette, by: ReadBy, random: () => number): readonly MixDye[] {
  const models = asWritten(truth, by, random).map((dye) => {
    const model = dyeModel(dye, handling);
    if (!model.ok) throw new Error(JSON.stringify(model.faults));
    return model.value;
  });
  const dyes = mixDyes(models, undefined);
  if (!dyes.ok) throw new Error(JSON.stringify(dyes.faults));
  return dyes.value;
}

/** Colours that two or three dyes of a palette give, mixed by recipe, corrected by a trial and by two. */
export function simulateRecipes(options: {
  readonly palettes: number;
  readonly targets: number;
  readonly seed: number;
  readonly by: ReadBy;
  readonly noise?: number;
  readonly make?: (random: () => number) => Palette;
}): readonly Tries[] {
  const random = seeded(options.seed);
  const missed: number[][] = Array.from({ length: tries }, () => []);
  const held = missed.map(() => 0);
  for (let p = 0; p < options.palettes; p++) {
    const truth = (options.make ?? palette)(random);
    const dyes = mixedFrom(truth, options.by, random);
    const all = (recipe: Recipe): number[] =>
      dyes.map((dye) => {
        const at = recipe.mixture.dyes.indexOf(dye);
        return at < 0 ? 0 : recipe.strengths[at]!;
      });
    for (let t = 0; t < options.targets; t++) {
      const wanted = dyes
        .map((_, i) => ({ i, at: random(), strength: 0.05 * 16 ** random() }))
        .sort((x, y) => x.at - y.at)
        .slice(0, random() < 0.4 ? 2 : 3);
      const strengths = dyes.map((_, i) => wanted.find((one) => one.i === i)?.strength ?? 0);
      const target = truth.colour({ strengths, seconds: 60 });
      const wish: RecipeWish = { target, seconds: 60, coldMl: () => 500 };
      const trials: MixTrial[] = [];
      let recipe: Recipe = ranked(findRecipes(dyes, wish), () => undefined, 1)[0]!.recipe;
      let doubt = firstDoubt95(recipe.mixture, recipe.strengths);
      for (let n = 0; n < tries; n++) {
        const real = truth.colour({ strengths: all(recipe), seconds: 60 });
        missed[n]!.push(ciede2000(real, target));
        if (ciede2000(real, recipe.lab) <= doubt) held[n]!++;
        if (n === tries - 1) break;
        trials.push({
          dyes: recipe.mixture.dyes,
          strengths: recipe.strengths,
          poured: pouredFor(recipe.mixture.dyes, recipe.strengths, 500),
          seconds: 60,
          lab: readLab(real, options.noise ?? 0.3, random),
        });
        recipe = correctedRecipe(trials, dyes, wish, fitTrials(trials)) ?? recipe;
        doubt = triedDoubt95(recipe.mixture, recipe.strengths, trials.map(strengthsByName));
      }
    }
  }
  return missed.map((one, n) => ({
    missed: one.sort((a, b) => a - b),
    held: held[n]! / one.length,
  }));
}

export const quantile = (sorted: readonly number[], p: number): number =>
  sorted[Math.round(p * (sorted.length - 1))]!;

/** The tries as a table. */
export const printedTries = (title: string, all: readonly Tries[]): string =>
  [
    `${title}: CIEDE2000 between the dyed part and the target`,
    "try   median    95th  doubt holds",
    ...all.map(
      ({ missed, held }, n) =>
        `${n + 1} ${quantile(missed, 0.5).toFixed(2).padStart(10)} ${quantile(missed, 0.95).toFixed(2).padStart(7)} ${(100 * held).toFixed(0).padStart(5)} of 100`,
    ),
  ].join("\n");
