import { changesBy, withChanges } from "./changes.js";
import type { Recipe } from "./find-recipes.js";

/** Recipes within this of the best are as good: a first dip misses by more [CIEDE2000]. */
export const equalWithin = 0.3;

/** A recipe with what ranks it. */
export interface Ranked {
  readonly recipe: Recipe;
  /** 0: as good as the best; 1: as good as the best of the others, and so on. */
  readonly group: number;
}

const namesOf = ({ mixture }: Recipe): string => mixture.dyes.map(({ name }) => name).join(", ");

/**
 * Recipes, best first. All within 0.3 of the best are equal; of them the one with the fewest dyes comes first, then the
 * least √(ΔE² + Σ (change by 10 % of strength)²), then the cheapest, then by names. The others follow in the same way: by
 * the smallest difference alone, noise would pick the recipe.
 * @param cost of a litre; undefined where it is not known
 */
export function ranked(
  recipes: readonly Recipe[],
  cost: (recipe: Recipe) => number | undefined,
  most = Number.POSITIVE_INFINITY,
): readonly Ranked[] {
  const rest = recipes.toSorted((one, other) => one.deltaE00 - other.deltaE00);
  const result: Ranked[] = [];
  for (let group = 0; rest.length > 0 && result.length < most; group++) {
    const within = rest[0]!.deltaE00 + equalWithin;
    const end = rest.findIndex(({ deltaE00 }) => deltaE00 > within);
    const equal = rest.splice(0, end < 0 ? rest.length : end).map((recipe) => ({
      recipe,
      size: withChanges(recipe.deltaE00, changesBy(recipe.mixture, recipe.strengths, 0.1)),
      price: cost(recipe) ?? 0,
    }));
    equal.sort(
      (a, b) =>
        a.recipe.strengths.length - b.recipe.strengths.length ||
        a.size - b.size ||
        a.price - b.price ||
        (namesOf(a.recipe) < namesOf(b.recipe) ? -1 : 1),
    );
    result.push(...equal.map(({ recipe }) => ({ recipe, group })));
  }
  return result.slice(0, most);
}
