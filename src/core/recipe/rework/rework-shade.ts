import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { done, error, failed, type Outcome } from "../../fault.js";
import type { Colour, Lab, Shade } from "../../model/batch.js";
import type { Reading } from "../../model/colour.js";
import { aimAt } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { hasCurve } from "../../uptake/shade/dye-model.js";
import { type LabAt, nearestOn } from "../../uptake/shade/find-time.js";
import { goOnAlong } from "../../uptake/shade/go-on.js";
import { offCurveFrom } from "../../uptake/shade/trial.js";
import { labAfter } from "../../uptake/swatches/shade-curve.js";
import { dyedColour } from "../../uptake/swatches/swatch-curves.js";

/** What a dyed part can still become. */
export interface Rework {
  readonly shade: string;
  readonly dye: string;
  /** `as-it-is` passes already; `goes-on` in its own dye; `over-dyed` by another, an estimate; `too-dark` to go on. */
  readonly how: "as-it-is" | "goes-on" | "over-dyed" | "too-dark";
  /** In a fresh bath. */
  readonly seconds: number;
  readonly wanted: Lab;
  readonly lab: Lab;
  readonly deltaE00: number;
  readonly tolerance: number;
  readonly reachable: boolean;
}

/** A part as it came out, and the dye it was dyed with where that is known. */
export interface MissedPart {
  readonly colour: Colour;
  readonly dye?: string;
}

/** The colours that a dye, or a mix, gives a part in a fresh bath. */
export interface ColourPath {
  readonly dye: string;
  readonly reading: Reading;
  /** On the base that the swatches were dyed on, and on a part of some colour as the base. */
  readonly labAt: LabAt;
  readonly over: (partKs: Float64Array) => LabAt;
  readonly longestSeconds: number;
  /** The time that the shade asks for. */
  readonly aimedSeconds: number;
}

/**
 * What a part becomes on its way to a shade. With the shade's own dye it goes on along that dye's curve for
 * t(target) - t(part), and how it lies off the curve stays as it is; taken as a new base it would stop far too early. With
 * another dye the part is the base: an estimate. A part whose dye is not known goes on where it lies on the curve.
 */
export function reworkShade(model: DyeModel, shade: Shade, part: MissedPart): Outcome<Rework> {
  if (!hasCurve(model))
    return failed(
      error(
        "rework-without-curve",
        ["dyes", model.dye.name],
        `dye "${model.dye.name}" has fewer than two swatches: what shade "${shade.name}" needs is not known`,
        `dip more swatches: dipwright swatches --dye ${model.dye.name} says which`,
      ),
    );
  const aim = aimAt(model, shade, undefined);
  if (!aim.ok) return aim;
  const { curve } = model.chosen;
  const path: ColourPath = {
    dye: model.dye.name,
    reading: model.dye.reading,
    labAt: (seconds) => labAfter(curve, seconds),
    over: (ks) => (seconds) => labAfter(curve, seconds, ks),
    longestSeconds: Math.max(model.longestSeconds, curve.referenceSeconds),
    aimedSeconds: aim.value.freshSeconds,
  };
  return reworkAlong(path, shade, part);
}

/** The same of any dye whose colours are known. */
export function reworkAlong(path: ColourPath, shade: Shade, part: MissedPart): Outcome<Rework> {
  const { dye, reading, labAt, over, longestSeconds, aimedSeconds } = path;
  const read = dyedColour(part.colour, reading, ["--from"]);
  if (!read.ok) return read;
  const wanted = wantedLab(path, shade);
  if (!wanted.ok) return wanted;
  const target = wanted.value;
  const become = (how: Rework["how"], seconds: number, lab: Lab): Outcome<Rework> => {
    const deltaE00 = ciede2000(lab, target);
    const { name, tolerance } = shade;
    const reachable = deltaE00 <= tolerance;
    return done({ shade: name, dye, how, seconds, wanted: target, lab, deltaE00, tolerance, reachable });
  };
  const { lab, ks } = read.value;
  if (ciede2000(lab, target) <= shade.tolerance) return become("as-it-is", 0, lab);
  const { at, lab: after } = goOnAlong(labAt, longestSeconds, lab, aimedSeconds);
  const same = part.dye === undefined ? at.deltaE00 <= offCurveFrom : part.dye === dye;
  if (!same) {
    const nearest = nearestOn(over(ks), target, 0, longestSeconds);
    return become("over-dyed", nearest.seconds, nearest.lab);
  }
  const more = aimedSeconds - at.seconds;
  if (more <= 0) return become("too-dark", 0, lab);
  return become("goes-on", more, after);
}

/** The colour that a shade asks for, as its dye reads it. */
function wantedLab({ labAt, reading, aimedSeconds }: ColourPath, { target, name }: Shade): Outcome<Lab> {
  if (target.kind !== "colour") return done(labAt(aimedSeconds));
  const wanted = dyedColour(target.colour, reading, ["shades", name]);
  return wanted.ok ? done(wanted.value.lab) : wanted;
}
