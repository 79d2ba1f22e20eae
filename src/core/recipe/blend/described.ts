import { ciede2000 } from "../../colour/difference/ciede2000.js";
import type { Base, Lab, Rates } from "../../model/batch.js";
import { type DyeAmount, dyeFigures } from "../../quantity/dye/dye-figures.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { isMeasured } from "../mixture/is-measured.js";
import { mixDyes } from "../mixture/mix-dye.js";
import { mixedLab, mixtureOf } from "../mixture/mixture.js";
import { type Poured, pouredFor } from "../solve/amounts.js";
import { changesBy } from "../solve/changes.js";
import { firstDoubt95, triedDoubt95 } from "../solve/doubt.js";
import type { Recipe } from "../solve/find-recipes.js";
import { type MixTrial, strengthsByName } from "../trial/fit-trials.js";
import { deltaE00ByIlluminant } from "./illuminants.js";
import { costPerL } from "./recipe-cost.js";

/** A dye in a recipe: its amount under the key of its unit, and its strength relative to its own fresh bath. */
export type RecipeDye = DyeAmount & { readonly dye: string; readonly strength: number };

/** What goes into one vessel, measured cold. */
export interface Pour {
  readonly dyes: readonly RecipeDye[];
  readonly waterMl: number;
  readonly coldMl: number;
}

/** A recipe as it is told. */
export interface BlendRecipe extends Pour {
  /** Recipes of one group are equally good; 0 holds the best. */
  readonly group: number;
  /** The same for a jar of half a litre. */
  readonly jar: Pour;
  readonly seconds: number;
  readonly celsius: number;
  readonly lab: Lab;
  readonly deltaE00: number;
  /** Under other light; null where reflectances were not measured. */
  readonly deltaE00ByIlluminant: { readonly A: number; readonly F11: number } | null;
  readonly costPerL: number | null;
  /** 95 % doubt of the colour [CIEDE2000]. */
  readonly doubt95: number;
  /** How far the colour moves when a dye is weighed or measured 2 % too much, for each dye [CIEDE2000]. */
  readonly changePer2Percent: readonly number[];
}

/** What recipes are described for. */
export interface DescribedFor {
  readonly coldMl: (celsius: number) => number;
  readonly rates: Rates;
  /** Of the target, where it was measured. */
  readonly targetKs: Float64Array | undefined;
  readonly trials: readonly MixTrial[];
}

/** A jar for a first dip, cold. */
export const jarMl = 500;
const weighing = 0.02;

export const pourOf = (poured: Poured, strengths: readonly number[]): Pour => ({
  dyes: poured.dyes.map(({ name, kind, amount }, i) => ({
    dye: name,
    ...dyeFigures(kind, { amount }),
    strength: strengths[i]!,
  })),
  waterMl: poured.waterMl,
  coldMl: poured.coldMl,
});

/** A recipe in all its figures. */
export function described(
  { mixture, strengths, lab, deltaE00 }: Recipe,
  group: number,
  { coldMl, rates, targetKs, trials }: DescribedFor,
): BlendRecipe {
  const { dyes, dip } = mixture;
  const pour = (ml: number): Pour => pourOf(pouredFor(dyes, strengths, ml), strengths);
  const known = targetKs !== undefined && dyes.every(({ model }) => isMeasured(model.dye));
  const tried = trials.map(strengthsByName);
  return {
    ...pour(coldMl(dip.celsius)),
    group,
    jar: pour(jarMl),
    seconds: dip.seconds,
    celsius: dip.celsius,
    lab,
    deltaE00,
    deltaE00ByIlluminant: known ? deltaE00ByIlluminant(mixture, strengths, targetKs) : null,
    costPerL: costPerL(dyes, strengths, rates) ?? null,
    doubt95: tried.length === 0 ? firstDoubt95(mixture, strengths) : triedDoubt95(mixture, strengths, tried),
    changePer2Percent: changesBy(mixture, strengths, weighing),
  };
}

/** What one recipe gives on a base. */
export interface OnBase {
  readonly base: string;
  readonly lab: Lab;
  readonly deltaE00: number;
  /** Not the base that the swatches were dyed on. */
  readonly estimated: boolean;
}

/** What a recipe gives on each base whose colour is known. */
export function onBases(
  { mixture, strengths }: Recipe,
  bases: readonly Base[],
  target: Lab,
): readonly OnBase[] {
  const models: readonly DyeModel[] = mixture.dyes.map(({ model }) => model);
  return bases.flatMap((base) => {
    const dyes = base.lab === undefined ? undefined : mixDyes(models, base);
    if (dyes === undefined || !dyes.ok) return [];
    const lab = mixedLab(mixtureOf(dyes.value, mixture.dip.seconds, mixture.correction), strengths);
    const estimated = dyes.value.some(({ ownBase }) => !ownBase);
    return [{ base: base.name, lab, deltaE00: ciede2000(target, lab), estimated }];
  });
}
