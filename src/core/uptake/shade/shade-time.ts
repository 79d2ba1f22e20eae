import { done, type Outcome } from "../../fault.js";
import type { Colour, Handling, Lab } from "../../model/batch.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { dipTimer } from "../law/dip-time.js";
import { madeUpStrength } from "../law/measured-at.js";
import type { UptakeModel } from "../law/uptake-model.js";
import { dyedColour } from "../swatches/swatch-curves.js";
import { aimAt, otherBase, type ShadeAim } from "./aim.js";
import { dipSlope, dipWindow } from "./dip-window.js";
import { type DyeModel, hasCurve } from "./dye-model.js";
import { type Influence, type Sensitivity, sensitivity } from "./sensitivity.js";
import { measuredBath, type ShadeBath } from "./shade-bath.js";
import { bringTo, type WayOut } from "./slower-dip.js";
import { type DoubtFrom, timeDoubt } from "./time-doubt.js";
import type { TriedUptake } from "./trial.js";

/** What moves the shade, and what each must be held to. `makeUpDye` only where the bath's volume is known. */
export interface ShadeSensitivity extends Omit<Sensitivity, "makeUpDye"> {
  readonly makeUpDye: (Influence & { readonly unit: "mL" | "g"; readonly volumeL: number }) | null;
}

/** A target colour and its tolerance [CIEDE2000]. */
export interface ShadeWish {
  readonly name: string;
  readonly target:
    | { readonly kind: "time"; readonly seconds: number }
    | { readonly kind: "colour"; readonly colour: Colour };
  readonly tolerance: number;
}

/** The time for a wish in the bath as it is. */
export interface ShadeTime {
  readonly name: string;
  readonly seconds: number;
  readonly depth: number;
  /** Null where one swatch does not tell the colour of that time. */
  readonly lab: Lab | null;
  readonly hex: string | null;
  readonly wanted: Lab | null;
  readonly wantedHex: string | null;
  readonly tolerance: number;
  readonly deltaE00: number | null;
  readonly windowSeconds: readonly [number, number | null] | null;
  readonly slopePerSecond: number | null;
  /** Null where fewer than two swatches tell it. */
  readonly interval95: readonly [number, number] | null;
  /** What is largest in the interval. */
  readonly intervalFrom: DoubtFrom | null;
  /** Noise per CIELAB axis in the interval; null without one. */
  readonly noise: number | null;
  readonly reachable: boolean;
  readonly extrapolated: boolean;
  readonly tooQuick: boolean;
  readonly tooNarrow: boolean;
  readonly tooLong: boolean;
  /** What would bring the dip to a minute, where it is too quick or too narrow for the hand. */
  readonly wayOut: WayOut | null;
  /** Null where the shade is out of reach, or its colours are not known. */
  readonly sensitivity: ShadeSensitivity | null;
}

/** The time for a wish in a bath; `uptake` and `tried` as the trial of the bath corrects them. */
export function shadeTime(
  model: DyeModel,
  handling: Handling,
  bath: ShadeBath,
  wish: ShadeWish,
  hex: (lab: Lab) => string,
  tried: TriedUptake | undefined,
): Outcome<ShadeTime> {
  const { dye } = model;
  const uptake = tried?.uptake ?? model.uptake;
  const shade = { name: wish.name, dye, target: wish.target, tolerance: wish.tolerance };
  const aimed = aimAt(model, shade, bath.base);
  if (!aimed.ok) return aimed;
  const aim = aimed.value;
  const wanted = wantedLab(model, wish, aim);
  if (!wanted.ok) return wanted;
  const { strength, celsius } = measuredBath(model, bath);
  const timer = dipTimer(uptake, celsius);
  const seconds = timer(aim.freshSeconds, strength);
  const window = dipWindow(timer, aim, strength);
  const doubt = doubtOf(model, handling, bath, wanted.value, aim, tried);
  const tooQuick = seconds < handling.shortestSeconds - 1e-9;
  const tooNarrow =
    window !== null &&
    window[1] !== null &&
    window[1] - window[0] < 2 * handling.timingSeconds &&
    aim.reachable;
  return done({
    name: wish.name,
    seconds,
    depth: aim.depth,
    lab: aim.lab,
    hex: aim.lab && hex(aim.lab),
    wanted: wanted.value,
    wantedHex: wanted.value && hex(wanted.value),
    tolerance: wish.tolerance,
    deltaE00: aim.deltaE00,
    windowSeconds: window,
    slopePerSecond: dipSlope(timer, aim, strength),
    interval95: doubt && [doubt.factors95[0] * seconds, doubt.factors95[1] * seconds],
    intervalFrom: doubt?.from ?? null,
    noise: doubt?.noise ?? null,
    reachable: aim.reachable,
    extrapolated: aim.extrapolated,
    tooQuick,
    tooNarrow,
    tooLong: seconds > handling.longestSeconds,
    wayOut: seconds < 60 && (tooQuick || tooNarrow) ? wayOutOf(model, uptake, bath, aim) : null,
    sensitivity:
      seconds === 0 || !aim.reachable || wanted.value === null
        ? null
        : sensitivityOf(model, uptake, bath, { seconds, target: wanted.value, tolerance: wish.tolerance }),
  });
}

function wantedLab({ dye }: DyeModel, { name, target }: ShadeWish, aim: ShadeAim): Outcome<Lab | null> {
  if (target.kind === "time") return done(aim.lab);
  const dyed = dyedColour(target.colour, dye.reading, ["shades", name]);
  return dyed.ok ? done(dyed.value.lab) : dyed;
}

function doubtOf(
  model: DyeModel,
  { timingSeconds }: Handling,
  bath: ShadeBath,
  wanted: Lab | null,
  { freshSeconds }: ShadeAim,
  tried: TriedUptake | undefined,
) {
  if (!hasCurve(model) || wanted === null || freshSeconds === 0) return null;
  const other = otherBase(model, bath.base);
  return timeDoubt(model, wanted, freshSeconds, measuredBath(model, bath), {
    timingSeconds,
    givenRate: model.dye.ratePerSecond,
    baseKs: other.ok ? other.value : undefined,
    trial: tried?.trial,
  });
}

function wayOutOf(model: DyeModel, uptake: UptakeModel, bath: ShadeBath, aim: ShadeAim): WayOut {
  const out = bringTo(uptake, aim.freshSeconds, measuredBath(model, bath));
  return {
    ...out,
    strength: out.strength === undefined ? undefined : out.strength / madeUpStrength(model.dye),
  };
}

function sensitivityOf(
  model: DyeModel,
  uptake: UptakeModel,
  bath: ShadeBath,
  { seconds, target, tolerance }: { seconds: number; target: Lab; tolerance: number },
): ShadeSensitivity | null {
  if (!hasCurve(model)) return null;
  const other = otherBase(model, bath.base);
  const { makeUp } = bath;
  const found = sensitivity({
    curve: model.chosen.curve,
    model: uptake,
    dip: { seconds, ...measuredBath(model, bath) },
    tolerance,
    target,
    makeUpDye: makeUp?.dye ?? 1,
    ...(other.ok && other.value ? { baseKs: other.value } : {}),
  });
  const { unit } = dyeKinds[model.dye.dilution.kind];
  return {
    ...found,
    makeUpDye: makeUp ? { ...found.makeUpDye, unit, volumeL: makeUp.volumeL } : null,
  };
}
