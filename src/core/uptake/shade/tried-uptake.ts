import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import { dyedColour } from "../swatches/swatch-curves.js";
import { otherBase } from "./aim.js";
import { type DyeModel, hasCurve } from "./dye-model.js";
import { measuredBath, type ShadeBath } from "./shade-bath.js";
import { type TriedUptake, withTrial } from "./trial.js";

/** The dye's uptake as a trial dip in the bath corrects it; undefined without one. */
export function triedUptake(model: DyeModel, bath: ShadeBath): Outcome<TriedUptake | undefined> {
  if (bath.trial === undefined) return done(undefined);
  const path: Fault["path"] = ["dyes", model.dye.name];
  if (!hasCurve(model))
    return failed(
      error(
        "trial-without-curve",
        path,
        `dye "${model.dye.name}" has fewer than two swatches: a trial dip cannot be compared with them`,
        "add the trial to its swatches instead",
      ),
    );
  const other = otherBase(model, bath.base);
  if (!other.ok) return other;
  const read = dyedColour(bath.trial.colour, model.dye.reading, path);
  if (!read.ok) return read;
  const { seconds } = bath.trial;
  return done(withTrial(model, { seconds, lab: read.value.lab }, measuredBath(model, bath), other.value));
}
