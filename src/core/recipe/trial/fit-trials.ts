import { fitNonlinear } from "../../maths/least-squares/nonlinear-least-squares.js";
import type { Lab } from "../../model/batch.js";
import type { Correction } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { mixedLab, mixtureOf } from "../mixture/mixture.js";
import type { Poured } from "../solve/amounts.js";
import type { Tried } from "../solve/doubt.js";

/** A dip in a mixed bath whose colour was read. */
export interface MixTrial {
  readonly dyes: readonly MixDye[];
  /** Of each dye, as poured. */
  readonly strengths: readonly number[];
  readonly poured: Poured;
  readonly seconds: number;
  /** Of the bath; absent: the lowest of its dyes'. */
  readonly celsius?: number;
  readonly lab: Lab;
}

/** The strengths of a trial by the names of its dyes, as the doubt needs them. */
export const strengthsByName = ({ dyes, strengths }: MixTrial): Tried => ({
  strengths: new Map(dyes.map(({ name }, i) => [name, strengths[i]!])),
});

/** What is thought of the corrections before any trial, and how exactly a colour is read. */
const factorDeviation = 0.1;
const offsetDeviation = 2;
const readingNoise = 0.35;

/**
 * What trials correct, from all of them together: the depth of each dye by a factor e (ln e is 0 ± 0.1 beforehand) and the
 * colour by a CIELAB offset (0 ± 2 an axis), readings off by 0.35 an axis; by least squares.
 */
export function fitTrials(trials: readonly MixTrial[]): Correction {
  const names = [...new Set(trials.flatMap(({ dyes }) => dyes.map(({ name }) => name)))];
  const asCorrection = (p: readonly number[]): Correction => ({
    factors: new Map(names.map((name, i) => [name, Math.exp(p[i]!)])),
    offset: p.slice(names.length) as unknown as Lab,
  });
  const residuals = (p: readonly number[]): number[] => {
    const correction = asCorrection(p);
    return [
      ...trials.flatMap(({ dyes, strengths, seconds, celsius, lab }) => {
        const foretold = mixedLab(mixtureOf(dyes, seconds, correction, celsius), strengths);
        return foretold.map((value, axis) => (value - lab[axis]!) / readingNoise);
      }),
      ...names.map((_, i) => p[i]! / factorDeviation),
      ...p.slice(names.length).map((value) => value / offsetDeviation),
    ];
  };
  const start = [...names.map(() => 0), 0, 0, 0];
  const size = [...names.map(() => 0.01), 0.1, 0.1, 0.1];
  return asCorrection(fitNonlinear({ residuals, start, size, maximumSteps: 100 }).parameters);
}
