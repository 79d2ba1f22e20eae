import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Base, Dye, Handling, Lab, Shade } from "../../model/batch.js";
import { freshDepth, type UptakeModel } from "../law/depth.js";
import { measuredCelsius } from "../law/measured-at.js";
import { type ChosenCurve, chooseCurve } from "../swatches/choose-law.js";
import { assumedProgress, labAfter } from "../swatches/shade-curve.js";
import { dyedColour, type SwatchSet, swatchSet } from "../swatches/swatch-curves.js";
import { colourPerSecond, nearestTime, type TimeWindow, windowAround } from "./find-time.js";

/** What is known of a dye before the bath is looked at. */
export interface DyeModel {
  readonly dye: Dye;
  readonly uptake: UptakeModel;
  /** The longest dip that is done: colours are sought up to it, extrapolated beyond the longest swatch. */
  readonly longestSeconds: number;
  /** Null where the dye has no swatches to tell its colours. */
  readonly chosen: ChosenCurve | null;
  /** What the rate rests on. */
  readonly rate: "given" | "fitted" | "assumed";
}

/** What a shade asks of any bath with its dye: a depth, and what is known of its colour. */
export interface ShadeAim {
  readonly depth: number;
  /** The time that gives the depth in a fresh bath at the dye's temperature. */
  readonly freshSeconds: number;
  /** Colour that the depth gives; null where the dye has no swatches to tell. */
  readonly lab: Lab | null;
  /** Difference between that colour and the shade. */
  readonly deltaE00: number | null;
  /** Depths within the shade's tolerance, `to` null where there is no far end; null where there are none, or no colour is known. */
  readonly window: { readonly from: number; readonly to: number | null } | null;
  /** CIEDE2000 per second in a fresh bath at the dye's temperature. */
  readonly slopePerFreshSecond: number | null;
  readonly reachable: boolean;
  readonly extrapolated: boolean;
  /** On another base than the swatches'. */
  readonly estimated: boolean;
}

/** The time that depth 1 stands for: the longest swatch; without swatches the longest dip. */
const referenceSecondsOf = (
  dye: Pick<Dye, "swatches">,
  handling: Pick<Handling, "longestSeconds">,
): number =>
  dye.swatches.length > 0
    ? Math.max(...dye.swatches.map((swatch) => swatch.seconds))
    : handling.longestSeconds;

/** The two steps of a dye's model that take long, so that they can be done once for many batches. */
export interface DyeWork {
  readonly setOf: (dye: Dye) => Outcome<SwatchSet>;
  readonly choose: (dye: Dye, set: SwatchSet) => ChosenCurve;
}

const afresh: DyeWork = {
  setOf: swatchSet,
  choose: (dye, set) => chooseCurve(set, dye.law, dye.ratePerSecond),
};

/**
 * How a dye goes in and what colours it gives: law and rate fitted to its swatches, or as given. A dye with
 * neither a rate nor swatches is a fault.
 */
export function dyeModel(
  dye: Dye,
  handling: Handling,
  { setOf, choose }: DyeWork = afresh,
): Outcome<DyeModel> {
  const common = {
    referenceSeconds: referenceSecondsOf(dye, handling),
    referenceCelsius: measuredCelsius(dye),
    ...(dye.saturation === undefined ? {} : { saturation: dye.saturation }),
    activationEnergyJPerMol: dye.activationEnergyJPerMol,
  };
  if (dye.swatches.length === 0) {
    if (dye.ratePerSecond === undefined)
      return failed(
        error(
          "no-rate",
          ["dyes", dye.name],
          `dye "${dye.name}" has neither swatches nor a rate: nothing says how long it takes`,
          "add swatches: - { time: 60 s, lab: [65.9, 44.6, 23.0] }, or rate: 0.012 /s",
        ),
      );
    const law = dye.law === "auto" ? "first-order" : dye.law;
    return done({
      dye,
      uptake: { law, ratePerSecond: dye.ratePerSecond, ...common },
      longestSeconds: handling.longestSeconds,
      chosen: null,
      rate: "given",
    });
  }
  const set = setOf(dye);
  if (!set.ok) return set;
  const chosen = choose(dye, set.value);
  const { law, ratePerSecond } = chosen.curve;
  const fitted = dye.swatches.length > 1 || law === "parabolic" ? "fitted" : "assumed";
  return done(
    {
      dye,
      uptake: { law, ratePerSecond, ...common },
      longestSeconds: handling.longestSeconds,
      chosen,
      rate: dye.ratePerSecond === undefined ? fitted : "given",
    },
    set.faults,
  );
}

/** K/S of a base that is not the swatches' own; undefined for their own. */
export function otherBase(model: DyeModel, base: Base | undefined): Outcome<Float64Array | undefined> {
  if (!base || base === model.dye.base || base.name === model.dye.base?.name) return done(undefined);
  if (!base.lab)
    return failed(
      error(
        "no-base-colour",
        ["bases", base.name],
        `base "${base.name}" has no colour`,
        "write lab: [38.4, 0.1, -0.9] as read",
      ),
    );
  const dyed = dyedColour({ kind: "lab", lab: base.lab }, model.dye.reading, ["bases", base.name, "lab"]);
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
  if (!chosen) {
    if (target.kind === "colour")
      return failed(
        error(
          "no-swatches",
          path,
          `shade "${shade.name}" is given as a colour, and dye "${shade.dye.name}" has no swatches to find its time from`,
          "add swatches to the dye, or give the shade as time: 30 s",
        ),
      );
    return done({
      depth: depthAfter(target.seconds),
      freshSeconds: target.seconds,
      lab: null,
      deltaE00: null,
      window: null,
      slopePerFreshSecond: null,
      reachable: true,
      extrapolated: target.seconds > uptake.referenceSeconds,
      estimated: false,
    });
  }
  const { curve } = chosen;
  const other = otherBase(model, base);
  if (!other.ok) return other;
  const ks = other.value;
  const aim = (seconds: number, deltaE00: number, window: TimeWindow | null): ShadeAim => ({
    depth: depthAfter(seconds),
    freshSeconds: seconds,
    lab: labAfter(curve, seconds, ks),
    deltaE00,
    window: window && {
      from: depthAfter(window[0]),
      to: window[1] === null ? null : depthAfter(window[1]),
    },
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

/** What `rate: "assumed"` stands on, in words. */
export const assumedRateText = `k t = ${assumedProgress} at the only swatch`;
