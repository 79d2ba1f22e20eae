import type { MixedDye } from "../../recipe/mixed-bath/mixed-dye.js";
import type { Mixture } from "../../recipe/mixture/mixture.js";
import { mixtureOf } from "../../recipe/mixture/mixture.js";
import { firstDoubt95, triedDoubt95 } from "../../recipe/solve/doubt.js";
import { strengthsByName } from "../../recipe/trial/fit-trials.js";

/** What the colours of a mixed bath rest on, and how far a dip may be off. */
export function mixtureInWords(
  { dye, strengths, trials, correction }: MixedDye,
  { dyes }: Mixture,
  seconds: number,
): string {
  const mixture = mixtureOf(dyes, seconds, correction, dye.celsius);
  const tried = trials.map(strengthsByName);
  const doubt =
    tried.length === 0 ? firstDoubt95(mixture, strengths) : triedDoubt95(mixture, strengths, tried);
  const after = tried.length === 0 ? "no trial" : tried.length === 1 ? "one trial" : `${tried.length} trials`;
  return `mix "${dye.name}": its dyes are taken not to compete for places in the fibre; with ${after}, a dip lies within ${doubt.toFixed(1)} CIEDE2000 of the colour in 95 of 100 cases${tried.length === 0 ? ": dip one part, read it, and write it under its trials" : ""}`;
}
