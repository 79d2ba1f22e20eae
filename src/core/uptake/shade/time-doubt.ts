import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import type { Lab } from "../../model/batch.js";
import { kelvinAtZeroCelsius } from "../../quantity/kelvin.js";
import { gasConstantJPerMolK } from "../law/arrhenius.js";
import type { DippedIn } from "../law/dip-time.js";
import { uptakeAtStrength } from "../law/isotherm.js";
import { slowing } from "../law/slowing.js";
import type { ChosenCurve } from "../swatches/choose-law.js";
import type { DyeModel } from "./dye-model.js";
import {
  type DoubtCurves,
  type DoubtOptions,
  doubtCurves,
  type FreshShifts,
  freshShifts,
  ownShifts,
} from "./fresh-doubt.js";

/** What makes a time uncertain. */
export type DoubtFrom = "readings" | "timing" | "law" | "strength" | "temperature" | "trial";

/** How far off the time of a dip may be for all that is not known. */
export interface TimeDoubt {
  /** Taken per CIELAB axis [one standard deviation]. */
  readonly noise: number;
  /** Factors on the time: the interval that holds it in 95 of 100 cases runs from the one to the other. */
  readonly factors95: readonly [low: number, high: number];
  /** What is largest in it. */
  readonly from: DoubtFrom;
}

/** One dip in the bath as it is, whose colour was read. */
export interface TrialRead {
  readonly lab: Lab;
  readonly seconds: number;
  /** That gives the colour in a fresh bath. */
  readonly freshSeconds: number;
}

/** A part of the doubt: half-widths of a 95 % interval of ln t. */
interface Part {
  readonly from: DoubtFrom;
  readonly low: number;
  readonly high: number;
}

/** Range of the activation energy where none is given or measured [J/mol]: a film's, to the highest published. */
const energyRange = [15e3, 110e3] as const;

/** Ratio of fresh-bath times from which a trial says nothing about the exponent [-]. */
const forgottenAt = 8;

/**
 * How far the exponent of one depth lies from that of another, and real ones outside 1 to 2: one standard deviation, from
 * the invented layer dyes of the simulation test.
 */
const exponentSpread = 0.1;

const root = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0));

/**
 * The doubt of a dip's time in a bath: reading noise and timing of the swatches, the choice of law, the strength
 * exponent where the strength is not 1 (between 1 and 2 where it is not measured), the activation energy where the
 * temperature is not the swatches' own (15 to 110 kJ/mol where it is neither given nor measured).
 *
 * A trial dip in the bath itself leaves what differs between its colour and the wanted one, its own reading and timing,
 * and, the farther apart the two are, what is not known of the exponent.
 * @param bath strength relative to the bath that the dye was measured in, temperature [°C]
 * @param near fresh time for the target [s]
 */
export function timeDoubt(
  model: DyeModel & { readonly chosen: ChosenCurve },
  target: Lab,
  near: number,
  bath: DippedIn,
  options: DoubtOptions & {
    readonly trial?: TrialRead | undefined;
    /** K/S of a base that is not the swatches' own. */
    readonly baseKs?: Float64Array | undefined;
    /** `doubtCurves` of the same model and options, where several times are asked for. */
    readonly curves?: DoubtCurves;
  },
): TimeDoubt {
  const { trial, baseKs, curves = doubtCurves(model.chosen, options) } = options;
  const shifts = freshShifts(curves, target, near, baseKs);
  const fresh = Math.max(0.5, Math.expm1(shifts.here));
  // Shifts are of ln(1 + t), the doubt is of ln t.
  const logPer = (1 + fresh) / fresh;
  const other = trial && freshShifts(curves, trial.lab, trial.freshSeconds, baseKs);
  const otherPer = trial ? (1 + trial.freshSeconds) / trial.freshSeconds : 0;
  const left = (of: (shifts: FreshShifts) => readonly number[]): number[] => {
    const apart = other && of(other);
    return of(shifts).map((shift, i) => shift * logPer - (apart?.[i] ?? 0) * otherPer);
  };
  const even = (from: DoubtFrom, deviation: number): Part => ({
    from,
    low: halfWidth95 * deviation,
    high: halfWidth95 * deviation,
  });
  const lawShift = Math.max(0, ...left(({ laws }) => laws).map(Math.abs)) / 2;
  const strength = strengthPart(model, fresh, bath.strength);
  const parts: Part[] = [
    even("readings", root(left(({ readings }) => readings))),
    even("timing", root(left(({ timing }) => timing))),
    even("law", lawShift),
    ...(trial === undefined || other === undefined
      ? [strength, temperaturePart(model, bath.celsius)]
      : [
          scaled(
            strength,
            Math.min(1, Math.abs(Math.log(fresh / trial.freshSeconds)) / Math.log(forgottenAt)),
          ),
          even(
            "trial",
            root([
              ...ownShifts(curves, trial.lab, other, baseKs).map((shift) => shift * otherPer),
              options.timingSeconds / halfWidth95 / trial.seconds,
            ]),
          ),
        ]),
  ];
  const largest = parts.reduce((most, part) => (part.low + part.high > most.low + most.high ? part : most));
  return {
    noise: shifts.noise,
    factors95: [Math.exp(-root(parts.map(({ low }) => low))), Math.exp(root(parts.map(({ high }) => high)))],
    from: largest.from,
  };
}

const scaled = ({ from, low, high }: Part, by: number): Part => ({ from, low: low * by, high: high * by });

function strengthPart({ uptake, response }: DyeModel, freshSeconds: number, strength: number): Part {
  const { strengthExponent: measured } = response;
  const a = Math.log(uptakeAtStrength(strength, uptake.saturation));
  if (measured !== undefined) {
    const half = halfWidth95 * Math.hypot(measured.standardError, exponentSpread) * Math.abs(a);
    return { from: "strength", low: half, high: half };
  }
  const here = Math.log(slowing(uptake, freshSeconds, strength));
  const [low, high] = [Math.min(-a, -2 * a), Math.max(-a, -2 * a)];
  const beyond = halfWidth95 * exponentSpread * Math.abs(a);
  return {
    from: "strength",
    low: Math.hypot(Math.max(0, here - low), beyond),
    high: Math.hypot(Math.max(0, high - here), beyond),
  };
}

function temperaturePart({ uptake, response, dye }: DyeModel, celsius: number): Part {
  const perJoule =
    (1 / (celsius + kelvinAtZeroCelsius) - 1 / (uptake.referenceCelsius + kelvinAtZeroCelsius)) /
    gasConstantJPerMolK;
  const { activationEnergyJPerMol: measured } = response;
  if (measured !== undefined) {
    const half = halfWidth95 * measured.standardError * Math.abs(perJoule);
    return { from: "temperature", low: half, high: half };
  }
  if (!dye.activationEnergyAssumed) return { from: "temperature", low: 0, high: 0 };
  const ends = energyRange.map((energy) => (energy - uptake.activationEnergyJPerMol) * perJoule);
  return { from: "temperature", low: Math.max(0, -Math.min(...ends)), high: Math.max(0, ...ends) };
}
