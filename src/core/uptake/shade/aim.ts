import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Base, Lab, Shade } from "../../model/batch.js";
import { duration } from "../../quantity/text/duration.js";
import { freshDepth } from "../law/uptake-model.js";
import { labAfter } from "../swatches/shade-curve.js";
import { dyedColour } from "../swatches/swatch-curves.js";
import type { DyeModel } from "./dye-model.js";
import { colourPerSecond, nearestTime, type TimeWindow, windowAround } from "./find-time.js";

/** What a shade asks of any bath with its dye: a depth, and what is known of its colour. */
export interface ShadeAim {
  readonly depth: number;
  /** The time that gives the depth in a fresh bath at the dye's temperature. */
  readonly freshSeconds: number;
  /** Colour that the depth gives; null where the dye has no swatches to tell. */
  readonly lab: Lab | null;
  /** Difference between that colour and the shade. */
  readonly deltaE00: number | null;
  /** Times in such a bath within the shade's tolerance, the far end null where it is never left; null without such times or without a known colour. */
  readonly freshWindow: TimeWindow | null;
  /** CIEDE2000 per second in a fresh bath at the dye's temperature. */
  readonly slopePerFreshSecond: number | null;
  readonly reachable: boolean;
  readonly extrapolated: boolean;
  /** On another base than the swatches'. */
  readonly estimated: boolean;
}

/** K/S of a base that is not the swatches' own, or no longer the colour that it had then; undefined for their own. */
export function otherBase(
  { dye, chosen }: DyeModel,
  base: Base | undefined,
): Outcome<Float64Array | undefined> {
  const own = base === undefined || base.name === dye.base?.name;
  const used = own ? dye.base : base;
  const then = chosen?.curve.set.base.lab;
  const unmoved =
    then === undefined || used?.lab === undefined || used.lab.every((value, i) => value === then[i]);
  if (own && unmoved) return done(undefined);
  if (!used?.lab)
    return failed(
      error(
        "no-base-colour",
        ["bases", used!.name],
        `base "${used!.name}" has no colour`,
        "write lab: [38.4, 0.1, -0.9] as read",
      ),
    );
  const dyed = dyedColour({ kind: "lab", lab: used.lab }, dye.reading, ["bases", used.name, "lab"]);
  return dyed.ok ? done(dyed.value.ks) : dyed;
}

/**
 * The depth a shade asks for. A shade given as a time or a swatch is what that time gives in a fresh bath; one
 * given as a colour is the nearest depth up to the longest swatch.
 */
export function aimAt(model: DyeModel, shade: Shade, base: Base | undefined): Outcome<ShadeAim> {
  const { target, tolerance } = shade;
  const path: Fault["path"] = ["shades", shade.name];
  const { uptake, chosen } = model;
  const depthAfter = (seconds: number): number => freshDepth(uptake, seconds);
  if (!chosen) return aimWithoutCurve(model, shade, base);
  const { curve } = chosen;
  const other = otherBase(model, base);
  if (!other.ok) return other;
  const ks = other.value;
  const aim = (seconds: number, deltaE00: number, window: TimeWindow | null): ShadeAim => ({
    depth: depthAfter(seconds),
    freshSeconds: seconds,
    lab: labAfter(curve, seconds, ks),
    deltaE00,
    freshWindow: window,
    slopePerFreshSecond: colourPerSecond(curve, seconds, ks),
    reachable: window !== null,
    extrapolated: seconds > curve.referenceSeconds * (1 + 1e-9),
    estimated: ks !== undefined,
  });
  if (target.kind !== "colour")
    return done(aim(target.seconds, 0, windowAround(curve, target.seconds, tolerance, ks)));
  const wanted = dyedColour(target.colour, model.dye.reading, path);
  if (!wanted.ok) return wanted;
  const nearest = nearestTime(curve, wanted.value.lab, tolerance, ks, model.longestSeconds);
  return done(aim(nearest.seconds, nearest.deltaE00, nearest.window));
}

/** The aim at a shade of a dye that has one swatch or none: by time, or at the swatch's own colour. */
function aimWithoutCurve(
  { uptake, onlySwatch, dye }: DyeModel,
  { name, target, tolerance }: Shade,
  base: Base | undefined,
): Outcome<ShadeAim> {
  const path: Fault["path"] = ["shades", name];
  const at = (seconds: number, lab: Lab | null, deltaE00: number | null): Outcome<ShadeAim> =>
    done({
      depth: freshDepth(uptake, seconds),
      freshSeconds: seconds,
      lab,
      deltaE00,
      freshWindow: null,
      slopePerFreshSecond: null,
      reachable: true,
      extrapolated: seconds > uptake.referenceSeconds,
      estimated: false,
    });
  const own = base === undefined || base.name === dye.base?.name ? onlySwatch : null;
  if (target.kind !== "colour")
    return target.seconds === own?.seconds ? at(own.seconds, own.lab, 0) : at(target.seconds, null, null);
  if (onlySwatch === null)
    return failed(
      error(
        "no-swatches",
        path,
        `shade "${name}" is given as a colour, and dye "${dye.name}" has no swatches to find its time from`,
        "add swatches to the dye, or give the shade as time: 30 s",
      ),
    );
  const wanted = dyedColour(target.colour, dye.reading, path);
  if (!wanted.ok) return wanted;
  const apart = own === null ? Number.POSITIVE_INFINITY : ciede2000(own.lab, wanted.value.lab);
  if (own !== null && apart <= tolerance) return at(own.seconds, own.lab, apart);
  return failed(
    error(
      "one-swatch",
      path,
      `dye "${dye.name}" has one swatch (${duration(onlySwatch.seconds)}), which tells no other colour than its own${Number.isFinite(apart) ? `, and that is ${apart.toFixed(1)} CIEDE2000 from shade "${name}"` : ""}`,
      `dip and read at least one more, a quarter and three times as long; dipwright swatches --dye ${dye.name} says which`,
    ),
  );
}
