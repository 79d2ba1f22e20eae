import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { done, error, failed, type Outcome } from "../../fault.js";
import type { Colour, Lab, Shade } from "../../model/batch.js";
import { aimAt } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { hasCurve, type WithCurve } from "../../uptake/shade/dye-model.js";
import { nearestTime } from "../../uptake/shade/find-time.js";
import { goOn } from "../../uptake/shade/go-on.js";
import { offCurveFrom } from "../../uptake/shade/trial.js";
import { labAfter } from "../../uptake/swatches/shade-curve.js";
import { type DyedColour, dyedColour } from "../../uptake/swatches/swatch-curves.js";

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

/**
 * What a part becomes on its way to a shade. With the shade's own dye it goes on along that dye's curve for
 * t(target) - t(part), and how it lies off the curve stays as it is; taken as a new base it would stop far too early. With
 * another dye the part is the base: an estimate. A part whose dye is not known goes on where it lies on the curve.
 */
export function reworkShade(model: DyeModel, shade: Shade, part: MissedPart): Outcome<Rework> {
  const { name, tolerance } = shade;
  if (!hasCurve(model))
    return failed(
      error(
        "rework-without-curve",
        ["dyes", model.dye.name],
        `dye "${model.dye.name}" has fewer than two swatches: what shade "${name}" needs is not known`,
        `dip more swatches: dipwright swatches --dye ${model.dye.name} says which`,
      ),
    );
  const read = dyedColour(part.colour, model.dye.reading, ["--from"]);
  if (!read.ok) return read;
  const aim = aimAt(model, shade, undefined);
  if (!aim.ok) return aim;
  const wanted = wantedLab(model, shade, aim.value.freshSeconds);
  if (!wanted.ok) return wanted;
  const target = wanted.value;
  const become = (how: Rework["how"], seconds: number, lab: Lab): Outcome<Rework> => {
    const deltaE00 = ciede2000(lab, target);
    const reachable = deltaE00 <= tolerance;
    return done({
      shade: name,
      dye: model.dye.name,
      how,
      seconds,
      wanted: target,
      lab,
      deltaE00,
      tolerance,
      reachable,
    });
  };
  const { lab } = read.value;
  if (ciede2000(lab, target) <= tolerance) return become("as-it-is", 0, lab);
  const { at, lab: after } = goOn(model, lab, aim.value.freshSeconds);
  const same = part.dye === undefined ? at.deltaE00 <= offCurveFrom : part.dye === model.dye.name;
  if (!same) return overDyed(model, read.value, target, become);
  const more = aim.value.freshSeconds - at.seconds;
  if (more <= 0) return become("too-dark", 0, lab);
  return become("goes-on", more, after);
}

function overDyed(
  { chosen: { curve }, longestSeconds }: WithCurve,
  part: DyedColour,
  target: Lab,
  become: (how: Rework["how"], seconds: number, lab: Lab) => Outcome<Rework>,
): Outcome<Rework> {
  const nearest = nearestTime(curve, target, 0, part.ks, longestSeconds);
  return become("over-dyed", nearest.seconds, nearest.lab);
}

/** The colour that a shade asks for, as its dye reads it. */
function wantedLab({ dye, chosen }: WithCurve, { target, name }: Shade, seconds: number): Outcome<Lab> {
  if (target.kind !== "colour") return done(labAfter(chosen.curve, seconds));
  const wanted = dyedColour(target.colour, dye.reading, ["shades", name]);
  return wanted.ok ? done(wanted.value.lab) : wanted;
}
