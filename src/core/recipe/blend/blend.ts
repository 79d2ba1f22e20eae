import type { Base, Handling, Lab, Rates } from "../../model/batch.js";
import { uncorrected } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { oneTemperature } from "../mixture/mixture.js";
import { bestTwoDips, darkBelow, type TwoDips } from "../sequence/two-dips.js";
import { findRecipes, type Recipe, type RecipeWish } from "../solve/find-recipes.js";
import { equalWithin, type Ranked, ranked } from "../solve/rank.js";
import { type Addition, additionTo } from "../trial/addition.js";
import { correctedRecipe } from "../trial/corrected-recipe.js";
import { fitTrials, type MixTrial } from "../trial/fit-trials.js";
import { type BlendRecipe, described, type OnBase, onBases, type Pour, pourOf } from "./described.js";
import { missedBecause } from "./gamut.js";
import { costPerL } from "./recipe-cost.js";

/** What a colour is mixed from, and for what. */
export interface BlendAsked {
  readonly dyes: readonly MixDye[];
  readonly target: Lab;
  /** K/S of the target where it was measured. */
  readonly targetKs?: Float64Array | undefined;
  readonly seconds: number;
  readonly coldMl: (celsius: number) => number;
  /** Most that the tank holds, cold; a trial in a smaller vessel has that much room over its own volume. */
  readonly capacityMl: (celsius: number) => number;
  readonly trials: readonly MixTrial[];
  /** The last of them, where it is known how much of its bath there is. */
  readonly standing?: MixTrial | undefined;
  readonly bases: readonly Base[];
  readonly rates: Rates;
  readonly handling: Handling;
}

/** What to add to the bath of the last trial. */
export interface BlendAddition extends Pour {
  /** Of the bath afterwards, cold. */
  readonly bathColdMl: number;
  readonly lab: Lab;
  readonly deltaE00: number;
  /** A fresh bath comes nearer by over 0.5. */
  readonly makeAfresh: boolean;
}

/** Recipes for a colour. */
export interface Blend {
  readonly target: Lab;
  readonly recipes: readonly BlendRecipe[];
  readonly addition: BlendAddition | null;
  /** Difference of the nearest recipe [CIEDE2000], and in which way it misses; null where there is none. */
  readonly nearest: number | null;
  readonly nearestBecause: string | null;
  /** For dark colours that they come as near to as one bath. */
  readonly twoDips: TwoDips | null;
  /** What the first recipe gives on each base. */
  readonly onBases: readonly OnBase[];
  /** The first recipe as the arithmetic has it. */
  readonly first: Recipe | undefined;
  /** A recipe has dyes of unlike temperatures. */
  readonly unlikeTemperatures: boolean;
}

/** Most recipes that are told, and how much farther than the nearest they may be [CIEDE2000]. */
const mostTold = 8;
const toldWithin = 5;
/** Where an addition misses by this much more than a fresh bath, it is better made afresh [CIEDE2000]. */
const afreshFrom = 0.5;

/** The recipes for a colour, best first; after trials the one that they correct. */
export function blend(asked: BlendAsked): Blend {
  const { dyes, target, seconds, coldMl, trials, rates } = asked;
  const wish: RecipeWish = { target, seconds, coldMl };
  const last = trials.at(-1);
  const correction = last === undefined ? uncorrected : fitTrials(trials);
  const cost = (recipe: Recipe): number | undefined => costPerL(recipe.mixture.dyes, recipe.strengths, rates);
  const found: readonly Ranked[] =
    last === undefined
      ? toldOf(findRecipes(dyes, wish), cost)
      : [correctedRecipe(trials, dyes, wish, correction)].flatMap((recipe) =>
          recipe === undefined ? [] : [{ recipe, group: 0 }],
        );
  const first = found[0]?.recipe;
  const nearest = found.reduce<Recipe | undefined>(
    (best, { recipe }) => (best !== undefined && best.deltaE00 <= recipe.deltaE00 ? best : recipe),
    undefined,
  );
  const facts = { coldMl, rates, targetKs: asked.targetKs, trials };
  return {
    target,
    recipes: found.map(({ recipe, group }) => described(recipe, group, facts)),
    addition:
      asked.standing === undefined || first === undefined
        ? null
        : toldAddition(additionAfter(asked, asked.standing, first, correction), first),
    nearest: nearest?.deltaE00 ?? null,
    nearestBecause: nearest === undefined ? null : missedBecause(target, nearest.lab),
    twoDips: last === undefined ? offeredTwoDips(asked, nearest) : null,
    onBases: first === undefined ? [] : onBases(first, asked.bases, target),
    first,
    unlikeTemperatures: found.some(({ recipe }) => !oneTemperature(recipe.mixture.dyes)),
  };
}

/** Two dips, for a dark colour that they come as near to as one bath does. */
function offeredTwoDips({ dyes, target, handling }: BlendAsked, nearest: Recipe | undefined): TwoDips | null {
  if (target[0] >= darkBelow) return null;
  const two = bestTwoDips(dyes, target, handling);
  const most = (nearest?.deltaE00 ?? Number.POSITIVE_INFINITY) + equalWithin;
  return two !== undefined && two.deltaE00 <= most ? two : null;
}

function toldOf(recipes: readonly Recipe[], cost: (recipe: Recipe) => number | undefined): readonly Ranked[] {
  const nearest = Math.min(...recipes.map(({ deltaE00 }) => deltaE00));
  return ranked(
    recipes.filter(({ deltaE00 }) => deltaE00 <= nearest + toldWithin),
    cost,
    mostTold,
  );
}

const without = (dyes: readonly MixDye[], left: readonly MixDye[]): readonly MixDye[] =>
  dyes.filter(({ name }) => !left.some((dye) => dye.name === name));

/** A trial in the tank may fill it to its capacity; one in a jar fills twice its own volume. */
const jarRoom = 2;

function additionAfter(
  { target, seconds, coldMl, capacityMl }: BlendAsked,
  last: MixTrial,
  first: Recipe,
  correction: ReturnType<typeof fitTrials>,
): Addition {
  const { celsius } = first.mixture.dip;
  const inTank = last.poured.coldMl > coldMl(celsius) / 2;
  const bath = {
    dyes: last.dyes,
    strengths: last.strengths,
    coldMl: last.poured.coldMl,
    capacityMl: inTank ? capacityMl(celsius) : jarRoom * last.poured.coldMl,
  };
  const dyes = [...last.dyes, ...without(first.mixture.dyes, last.dyes)];
  return additionTo(bath, dyes, { target, seconds }, correction);
}

function toldAddition(addition: Addition, first: Recipe): BlendAddition {
  const { poured, strengths, lab, deltaE00, coldMl } = addition;
  const told = pourOf(poured, strengths);
  return {
    ...told,
    bathColdMl: coldMl,
    lab,
    deltaE00,
    makeAfresh: deltaE00 > first.deltaE00 + afreshFrom,
  };
}
