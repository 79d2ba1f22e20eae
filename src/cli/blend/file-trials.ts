import { done, type Outcome } from "../../core/fault.js";
import type { Base, Dye } from "../../core/model/batch.js";
import { trialsOfMix } from "../../core/recipe/mixed-bath/trials-of-mix.js";
import type { MixDye } from "../../core/recipe/mixture/mix-dye.js";
import type { MixTrial } from "../../core/recipe/trial/fit-trials.js";

const same = (one: MixTrial, other: MixTrial): boolean =>
  one.seconds === other.seconds && one.lab.every((value, axis) => value === other.lab[axis]);

/**
 * The trials of a mix in the batch file, without those that are typed too. Null where they say nothing of this recipe: the
 * mix has another base, or a dye that the recipe may not use.
 */
export function fileTrials(
  mix: Dye | undefined,
  dyes: readonly MixDye[],
  base: Base | undefined,
  typed: readonly MixTrial[],
): Outcome<readonly MixTrial[] | null> {
  if (mix?.mix === undefined || mix.mix.trials.length === 0) return done([]);
  const parts = mix.mix.parts.flatMap(({ dye }) => dyes.find(({ name }) => name === dye.name) ?? []);
  if (parts.length < mix.mix.parts.length) return done(null);
  // Without a base the recipe is for that of the swatches, as a mix without one is.
  if ((base ?? parts[0]!.model.dye.base)?.name !== mix.base?.name) return done(null);
  const trials = trialsOfMix({ ...mix, mix: mix.mix }, parts);
  return trials.ok ? done(trials.value.filter((trial) => !typed.some((one) => same(trial, one)))) : trials;
}
