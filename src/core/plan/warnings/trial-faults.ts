import { error, type Fault, type Outcome, warning } from "../../fault.js";
import type { Bath } from "../../model/batch.js";
import { offCurveFrom, type TriedUptake } from "../../uptake/shade/trial.js";

/** Factors on all times beyond which a trial is more likely wrong than the bath [-]. */
const unlikelyFactor = 2.5;

/** What is wrong with the trial dip of a bath, or doubtful about it. */
export function trialFaults(bath: Bath, tried: Outcome<TriedUptake | undefined>): Fault[] {
  const path = ["baths", bath.index, "trial"];
  const where = `the trial in the bath of "${bath.dye.name}" in tank "${bath.tank.name}"`;
  if (!tried.ok) return tried.faults.map(({ code, message, help }) => error(code, path, message, help));
  if (tried.value === undefined) return [];
  const { deltaE00, factor } = tried.value;
  const faults: Fault[] = [];
  if (deltaE00 > offCurveFrom)
    faults.push(
      warning(
        "trial-off-curve",
        path,
        `${where} has a colour that is ${deltaE00.toFixed(1)} CIEDE2000 from any that the dye gives`,
        "read the part again, dry and under the light of the swatches; dirt or another dye in the bath does this too",
      ),
    );
  if (factor > unlikelyFactor || factor < 1 / unlikelyFactor)
    faults.push(
      warning(
        "trial-unlikely",
        path,
        `${where} makes all times ${factor.toFixed(2)} times as long as the swatches and the strength say`,
        "check its time and colour, and the strength of the bath",
      ),
    );
  return faults;
}
