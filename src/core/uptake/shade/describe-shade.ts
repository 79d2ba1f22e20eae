import { screenColour } from "../../colour/screen/screen-swatch.js";
import { done, type Fault, type Outcome } from "../../fault.js";
import type { Base, Colour, Dye, Handling, Lab, LawName } from "../../model/batch.js";
import { depthAt, dipTimer, equivalentSeconds, freshDepth } from "../law/depth.js";
import { madeUpStrength } from "../law/measured-at.js";
import type { LeaveOneOut } from "../swatches/choose-law.js";
import { labAfter } from "../swatches/shade-curve.js";
import { dyedColour } from "../swatches/swatch-curves.js";
import { aimAt, type DyeModel, dyeModel, otherBase } from "./aim.js";
import { dipSlope, dipWindow } from "./dip-window.js";
import { type Influence, type Sensitivity, sensitivity } from "./sensitivity.js";
import { bringTo, type WayOut } from "./slower-dip.js";
import { timeDoubt } from "./time-doubt.js";

/** The bath that is asked about. */
export interface ShadeBath {
  readonly strength: number;
  readonly celsius: number;
  readonly base?: Base;
  /** Of a fresh one, mL of concentrate or g of powder, and its volume; where a tank of the spec holds the dye. */
  readonly makeUp?: ShadeMakeUp;
}

export interface ShadeMakeUp {
  readonly dye: number;
  readonly volumeL: number;
}

/** What moves the shade, and what each must be held to. `makeUpDye` only where the bath's volume is known. */
export interface ShadeSensitivity extends Omit<Sensitivity, "makeUpDye"> {
  readonly makeUpDye: (Influence & { readonly unit: "mL" | "g"; readonly volumeL: number }) | null;
}

/** A colour that is wanted, and how near it must be met [CIEDE2000]. */
export interface ShadeWish {
  readonly name: string;
  readonly target:
    | { readonly kind: "time"; readonly seconds: number }
    | { readonly kind: "colour"; readonly colour: Colour };
  readonly tolerance: number;
}

/** One point of a shade curve. Beyond the longest swatch it is extrapolated. */
export interface ShadePoint {
  readonly seconds: number;
  readonly depth: number;
  readonly lab: Lab;
  readonly hex: string;
  readonly extrapolated: boolean;
}

/** The time for a wish in the bath as it is. Times are null where the bath is too weak at any time. */
export interface ShadeTime {
  readonly name: string;
  readonly seconds: number | null;
  readonly depth: number;
  readonly lab: Lab;
  readonly hex: string;
  readonly wanted: Lab;
  readonly wantedHex: string;
  readonly tolerance: number;
  readonly deltaE00: number;
  readonly windowSeconds: readonly [number, number | null] | null;
  readonly slopePerSecond: number | null;
  /** Null for a shade that is given as a time: nothing was read. */
  readonly interval95: readonly [number, number | null] | null;
  /** Noise per CIELAB axis that the interval stands for; null without one. */
  readonly noise: number | null;
  readonly reachable: boolean;
  readonly tooWeak: boolean;
  readonly extrapolated: boolean;
  readonly tooQuick: boolean;
  readonly tooNarrow: boolean;
  readonly tooLong: boolean;
  /** What would bring the dip to a minute, where it is too quick or too narrow for the hand. */
  readonly wayOut: WayOut | null;
  /** Null where the shade is out of reach, or no time gives it. */
  readonly sensitivity: ShadeSensitivity | null;
}

export interface ShadeDescription {
  readonly dye: string;
  readonly law: LawName;
  readonly ratePerSecond: number;
  readonly rateFrom: DyeModel["rate"];
  readonly referenceSeconds: number;
  readonly strength: number;
  readonly celsius: number;
  /** The bath has the temperature that the swatches were dyed at. */
  readonly ownTemperature: boolean;
  readonly base: string | null;
  /** On another base than the swatches'. */
  readonly estimated: boolean;
  readonly swatches: readonly { readonly seconds: number; readonly lab: Lab; readonly hex: string }[];
  readonly leaveOneOut: { readonly median: number; readonly max: number } | null;
  readonly tried: readonly LeaveOneOut[];
  readonly curve: readonly ShadePoint[];
  /** The same at even steps, for drawing. */
  readonly drawn: readonly ShadePoint[];
  readonly target: ShadeTime | null;
}

const drawnSteps = 100;
const marks = [5, 10, 15, 20, 30, 45, 60, 75, 90, 120, 150, 180, 240, 300, 420, 600, 900, 1200, 1800];

/** Times that a curve is printed at: round ones up to the longest, the swatches' own, and the longest. */
function printedTimes(swatches: readonly number[], longest: number): number[] {
  const last = Math.max(longest, ...swatches);
  return [...new Set([...marks.filter((t) => t < last), ...swatches, last])].sort((a, b) => a - b);
}

/**
 * The shade curve of a dye in a bath as it is, and the time for a wish in it; null for a dye that has a rate and
 * no swatches.
 */
export function describeShade(
  dye: Dye,
  handling: Handling,
  bath: ShadeBath,
  wish?: ShadeWish,
): Outcome<ShadeDescription | null> {
  const model = dyeModel(dye, handling);
  if (!model.ok) return model;
  const { chosen, uptake, rate } = model.value;
  if (!chosen) return done(null, model.faults);
  const other = otherBase(model.value, bath.base);
  if (!other.ok) return other;
  const { curve, tried } = chosen;
  const madeUp = madeUpStrength(dye);
  const { set } = curve;
  const hex = (lab: Lab): string => screenColour(lab, set.reading).hex;
  const swatches = set.swatches.map(({ seconds, lab }) => ({ seconds, lab, hex: hex(lab) }));
  const pointAt = (seconds: number): ShadePoint[] => {
    const depth = depthAt(uptake, { seconds, strength: bath.strength * madeUp, celsius: bath.celsius });
    const fresh = equivalentSeconds(uptake, depth);
    if (fresh === undefined) return [];
    const lab = labAfter(curve, fresh, other.value);
    return [
      { seconds, depth, lab, hex: hex(lab), extrapolated: fresh > uptake.referenceSeconds * (1 + 1e-9) },
    ];
  };
  const longest = Math.max(handling.longestSeconds, uptake.referenceSeconds);
  const times = printedTimes(
    swatches.map(({ seconds }) => seconds),
    longest,
  );
  const drawnTimes = Array.from({ length: drawnSteps + 1 }, (_, i) => (longest * i) / drawnSteps);
  const timed = wish === undefined ? done(null) : timeFor(model.value, handling, bath, wish, hex);
  if (!timed.ok) return timed;
  const own = tried.find(({ law }) => law === curve.law);
  return done(
    {
      dye: dye.name,
      law: curve.law,
      ratePerSecond: uptake.ratePerSecond,
      rateFrom: rate,
      referenceSeconds: uptake.referenceSeconds,
      strength: bath.strength,
      celsius: bath.celsius,
      ownTemperature: bath.celsius === uptake.referenceCelsius && madeUp === 1,
      base: (bath.base ?? dye.base)?.name ?? null,
      estimated: other.value !== undefined,
      swatches,
      leaveOneOut: own ? { median: own.median, max: own.max } : null,
      tried,
      curve: times.flatMap(pointAt),
      drawn: drawnTimes.flatMap(pointAt),
      target: timed.value,
    },
    [...model.faults, ...timed.faults],
  );
}

function timeFor(
  model: DyeModel,
  handling: Handling,
  bath: ShadeBath,
  wish: ShadeWish,
  hex: (lab: Lab) => string,
): Outcome<ShadeTime> {
  const { uptake, chosen, dye } = model;
  const shade = { name: wish.name, dye, target: wish.target, tolerance: wish.tolerance };
  const aimed = aimAt(model, shade, bath.base);
  if (!aimed.ok) return aimed;
  const aim = aimed.value;
  const path: Fault["path"] = ["shades", wish.name];
  const wanted =
    wish.target.kind === "colour" ? dyedColour(wish.target.colour, dye.reading, path) : undefined;
  if (wanted && !wanted.ok) return wanted;
  const wantedLab = wanted?.value.lab ?? aim.lab!;
  const timer = dipTimer(uptake, bath.celsius);
  const strength = bath.strength * madeUpStrength(dye);
  const at = (depth: number): number | null => timer(depth, strength) ?? null;
  const seconds = at(aim.depth);
  const window = dipWindow(timer, aim, strength);
  const doubt = wish.target.kind === "time" ? null : doubtful();
  function doubtful(): {
    readonly interval: readonly [number, number | null];
    readonly noise: number;
  } | null {
    const other = otherBase(model, bath.base);
    const baseKs = other.ok ? other.value : undefined;
    const { interval95, noise } = timeDoubt(chosen!, wantedLab, { givenRate: dye.ratePerSecond, baseKs });
    const [low, high] = [at(freshDepth(uptake, interval95[0])), at(freshDepth(uptake, interval95[1]))];
    return low === null ? null : { interval: [low, high], noise };
  }
  function wayOutOf(): WayOut {
    const madeUp = madeUpStrength(dye);
    const out = bringTo(uptake, { depth: aim.depth, strength, celsius: bath.celsius });
    return { ...out, strength: out.strength === undefined ? undefined : out.strength / madeUp };
  }
  const tooQuick = seconds !== null && seconds < handling.shortestSeconds - 1e-9;
  const tooNarrow =
    window !== null &&
    window[1] !== null &&
    window[1] - window[0] < 2 * handling.timingSeconds &&
    aim.reachable;
  const slower = seconds !== null && seconds < 60 && (tooQuick || tooNarrow);
  return done({
    name: wish.name,
    seconds,
    depth: aim.depth,
    lab: aim.lab!,
    hex: hex(aim.lab!),
    wanted: wantedLab,
    wantedHex: hex(wantedLab),
    tolerance: wish.tolerance,
    deltaE00: aim.deltaE00!,
    windowSeconds: window,
    slopePerSecond: dipSlope(uptake, timer, aim, strength),
    interval95: doubt?.interval ?? null,
    noise: doubt?.noise ?? null,
    reachable: aim.reachable,
    tooWeak: seconds === null,
    extrapolated: aim.extrapolated,
    tooQuick,
    tooNarrow,
    tooLong: seconds !== null && seconds > handling.longestSeconds,
    wayOut: slower ? wayOutOf() : null,
    sensitivity:
      seconds === null || seconds === 0 || !aim.reachable
        ? null
        : sensitivityOf(model, bath, { seconds, target: wantedLab, tolerance: wish.tolerance }),
  });
}

function sensitivityOf(
  model: DyeModel,
  bath: ShadeBath,
  { seconds, target, tolerance }: { seconds: number; target: Lab; tolerance: number },
): ShadeSensitivity | null {
  const { chosen, uptake, dye } = model;
  const other = otherBase(model, bath.base);
  const { makeUp } = bath;
  const found = sensitivity({
    curve: chosen!.curve,
    model: uptake,
    dip: { seconds, strength: bath.strength * madeUpStrength(dye), celsius: bath.celsius },
    tolerance,
    target,
    makeUpDye: makeUp?.dye ?? 1,
    ...(other.ok && other.value ? { baseKs: other.value } : {}),
  });
  if (found === undefined) return null;
  const unit = dye.dilution.kind === "liquid" ? ("mL" as const) : ("g" as const);
  return {
    ...found,
    makeUpDye: makeUp ? { ...found.makeUpDye, unit, volumeL: makeUp.volumeL } : null,
  };
}
