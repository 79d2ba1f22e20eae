import type { Lab } from "../../model/batch.js";
import type { Correction } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { type Mixture, mixtureOf } from "../mixture/mixture.js";
import { tooLittle } from "./amounts.js";
import { freshLimits, type Solved, solveSet } from "./solve-set.js";

/** A mixture with the strengths that come nearest to a colour. */
export interface Recipe extends Solved {
  readonly mixture: Mixture;
}

/** What recipes are sought for. */
export interface RecipeWish {
  readonly target: Lab;
  readonly seconds: number;
  /** Cold fill of a bath of a temperature [mL]. */
  readonly coldMl: (celsius: number) => number;
}

/** Most dyes in one bath. */
export const mostDyes = 3;

/** Every set of so many of the dyes, in their order. */
export function* setsOf(dyes: readonly MixDye[], count: number, from = 0): Generator<readonly MixDye[]> {
  if (count === 0) yield [];
  else
    for (let i = from; i <= dyes.length - count; i++)
      for (const rest of setsOf(dyes, count - 1, i + 1)) yield [dyes[i]!, ...rest];
}

/** Strength at which a dye enters a recipe that does not have it yet. */
export const trace = 0.01;

/**
 * The best recipe of every set of one to three dyes, those with too little of a dye left out: the set without it has
 * its own.
 */
export function findRecipes(
  dyes: readonly MixDye[],
  wish: RecipeWish,
  correction?: Correction,
): readonly Recipe[] {
  const found = new Map<string, Recipe>();
  const keyOf = (set: readonly MixDye[]): string => set.map(({ name }) => name).join("\n");
  for (let count = 1; count <= Math.min(mostDyes, dyes.length); count++)
    for (const set of setsOf(dyes, count)) {
      const fewer =
        count === 1
          ? []
          : set.map((left) => ({ left, recipe: found.get(keyOf(set.filter((dye) => dye !== left)))! }));
      const starts = fewer.map(({ left, recipe }) => {
        const at = set.indexOf(left);
        return recipe.strengths.toSpliced(at, 0, trace);
      });
      const mixture = mixtureOf(set, wish.seconds, correction);
      found.set(keyOf(set), { mixture, ...solveSet(mixture, wish.target, freshLimits(count), starts) });
    }
  return [...found.values()].filter((recipe) => enoughOfEach(recipe, wish));
}

const enoughOfEach = ({ mixture, strengths }: Recipe, { coldMl }: RecipeWish): boolean =>
  mixture.dyes.every((dye, i) => !tooLittle(dye, strengths[i]!, coldMl(mixture.dip.celsius)));

/**
 * The recipe of one set of dyes; while too little of a dye would be in it, that dye is left out and the rest solved again.
 * Undefined where none is left.
 * @param start strengths to search from first: of several perfect matches the nearest is taken
 */
export function recipeOf(
  dyes: readonly MixDye[],
  wish: RecipeWish,
  correction?: Correction,
  start?: readonly number[],
): Recipe | undefined {
  if (dyes.length === 0) return undefined;
  const mixture = mixtureOf(dyes, wish.seconds, correction);
  const solved = solveSet(mixture, wish.target, freshLimits(dyes.length), start && [start]);
  const cold = wish.coldMl(mixture.dip.celsius);
  let least = -1;
  dyes.forEach((dye, i) => {
    const little = tooLittle(dye, solved.strengths[i]!, cold);
    if (little && (least < 0 || solved.strengths[i]! < solved.strengths[least]!)) least = i;
  });
  if (least < 0) return { mixture, ...solved };
  return recipeOf(dyes.toSpliced(least, 1), wish, correction, solved.strengths.toSpliced(least, 1));
}
