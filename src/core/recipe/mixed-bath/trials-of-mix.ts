import { done, failed, isError, type Outcome } from "../../fault.js";
import type { Dye, Mix } from "../../model/batch.js";
import { dyedColour } from "../../uptake/swatches/swatch-curves.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { pouredFor } from "../solve/amounts.js";
import type { MixTrial } from "../trial/fit-trials.js";

/** Trials in the batch file are amounts in a litre: the file does not say how much was mixed. */
const aLitreMl = 1000;

/**
 * The trials of a mix as they were dipped.
 * @param dyes its parts, in their order, over the mix's base
 */
export function trialsOfMix(
  { mix, name, celsius, reading }: Dye & { readonly mix: Mix },
  dyes: readonly MixDye[],
): Outcome<readonly MixTrial[]> {
  const trials = mix.trials.map(({ seconds, strengths, colour }, i): Outcome<MixTrial> => {
    const read = dyedColour(colour, reading, ["dyes", name, "trials", i]);
    if (!read.ok) return read;
    const poured = pouredFor(dyes, strengths, aLitreMl);
    return done({ dyes, strengths, poured, seconds, celsius, lab: read.value.lab });
  });
  const faults = trials.flatMap((trial) => trial.faults);
  return faults.some(isError)
    ? failed(...faults)
    : done(trials.flatMap((trial) => (trial.ok ? [trial.value] : [])));
}
