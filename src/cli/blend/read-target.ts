import { carryOver } from "../../core/colour/spectrum/convert-reading.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Lab } from "../../core/model/batch.js";
import type { Reading } from "../../core/model/colour.js";
import { ksAfter } from "../../core/recipe/blend/illuminants.js";
import { isMeasured } from "../../core/recipe/mixture/is-measured.js";
import { labAfter } from "../../core/uptake/swatches/shade-curve.js";
import { dyedColour } from "../../core/uptake/swatches/swatch-curves.js";
import { dyeOfTime } from "../batch/dye-of-time.js";
import { readWish } from "../batch/pick.js";

/** A colour to be mixed. */
export interface BlendTarget {
  readonly name: string;
  readonly lab: Lab;
  readonly tolerance: number;
  /** K/S, where the colour is one that a measured dye gives. */
  readonly ks?: Float64Array;
}

/** The colour that a shade of the spec asks for by a time, as its dye gives it. */
function ofTime(
  batch: Batch,
  name: string,
  seconds: number,
): Outcome<Pick<BlendTarget, "lab" | "ks"> & { readonly reading: Reading }> {
  const shade = batch.shades.find((one) => one.name === name)!;
  const model = dyeOfTime(batch, shade, "target");
  if (!model.ok) return model;
  const { dye } = shade;
  const lab = labAfter(model.value.chosen.curve, seconds);
  const ks = isMeasured(dye) ? { ks: ksAfter(model.value, seconds) } : {};
  return done({ lab, ...ks, reading: dye.reading });
}

/** The colour that --target means, as the dyes read theirs. */
export function readTarget(batch: Batch, typed: string | undefined, reading: Reading): Outcome<BlendTarget> {
  const wish = readWish(batch, typed, undefined);
  if (!wish.ok) return wish;
  if (wish.value === undefined)
    return failed(
      error(
        "usage",
        [],
        "--target is needed: the colour to mix",
        "write --target 55,-18,22, a hex colour or a shade",
      ),
    );
  const { name, target, tolerance } = wish.value;
  if (target.kind === "time") {
    const timed = ofTime(batch, name, target.seconds);
    if (!timed.ok) return timed;
    const { reading: from, ks } = timed.value;
    const lab = carryOver(timed.value.lab, from, reading);
    return lab.ok ? done({ name, tolerance, lab: lab.value, ...(ks ? { ks } : {}) }) : lab;
  }
  const shade = batch.shades.find((one) => one.name === name);
  const dyed = dyedColour(target.colour, shade?.dye.reading ?? reading, ["--target"]);
  if (!dyed.ok) return dyed;
  const lab = carryOver(dyed.value.lab, shade?.dye.reading ?? reading, reading);
  return lab.ok ? done({ name, tolerance, lab: lab.value }) : lab;
}
