import { bestReading, information } from "../../maths/least-squares/best-reading.js";
import type { Handling, Lab } from "../../model/batch.js";
import { equivalentSeconds } from "../law/dip-time.js";
import { lawLogSlope, lawUptake, uptakeLaws } from "../law/laws.js";
import { bathResponse } from "../swatches/bath-response.js";
import type { ChosenCurve } from "../swatches/choose-law.js";
import { handySeconds, ladder } from "../swatches/first-swatches.js";
import { labAfter, shadeCurve } from "../swatches/shade-curve.js";
import { type DyedSwatch, dyedColour, type SwatchSet } from "../swatches/swatch-curves.js";
import { apartDips, type DyeModel } from "./dye-model.js";
import { nearestTime } from "./find-time.js";
import { type DoubtCurves, doubtCurves } from "./fresh-doubt.js";
import { timeDoubt } from "./time-doubt.js";

/** A dip that is worth making. */
export interface WantedDip {
  readonly seconds: number;
  readonly strength: number;
  readonly celsius: number;
}

/** The dip that helps most, and how much narrower it makes the intervals of the times asked for [share]. */
export interface NextSwatch {
  readonly dip: WantedDip;
  readonly gain: number;
}

/** Gain below which a swatch is not worth its part. */
export const leastGain = 0.05;

/** The strength that a bath is weakened to for a swatch of its own, and the one that times are asked for beside fresh. */
const weakened = 0.5;
const usedStrength = 0.7;

const candidates = 10;

type WithCurve = DyeModel & { readonly chosen: ChosenCurve };

/** Geometric mean of the widths of the intervals of all targets, in a fresh bath and in a used one. */
function width(
  model: WithCurve,
  targets: readonly Lab[],
  { timingSeconds }: Handling,
  curves: DoubtCurves,
): number {
  const { curve } = model.chosen;
  const celsius = model.uptake.referenceCelsius;
  let sum = 0;
  for (const target of targets) {
    const fresh = nearestTime(curve, target, 0, undefined, model.longestSeconds).seconds;
    for (const strength of [1, usedStrength]) {
      const { factors95 } = timeDoubt(model, target, fresh, { strength, celsius }, { timingSeconds, curves });
      sum += Math.log(factors95[1] / factors95[0]);
    }
  }
  return sum / (2 * targets.length);
}

/**
 * The model with one more swatch of the colour that it predicts; undefined where there is such a swatch.
 * @param alone the curves that the doubt rests on where no other law is considered
 */
function withSwatch(
  model: WithCurve,
  dip: WantedDip,
  handling: Handling,
  alone: DoubtCurves,
): WithCurve | undefined {
  const { dye, chosen, uptake } = model;
  const { set } = chosen.curve;
  const dyed = dyedColour(
    { kind: "lab", lab: labAfter(chosen.curve, equivalentSeconds(uptake, dip)) },
    set.reading,
    [],
  );
  if (!dyed.ok) return undefined;
  const swatch: DyedSwatch = { ...dyed.value, seconds: dip.seconds };
  if (dip.strength === 1) {
    if (set.swatches.some(({ seconds }) => seconds === dip.seconds)) return undefined;
    const more: SwatchSet = {
      ...set,
      swatches: [...set.swatches, swatch].sort((a, b) => a.seconds - b.seconds),
    };
    const curve = shadeCurve(more, chosen.curve.law, dye.ratePerSecond);
    return { ...model, chosen: { curve, tried: chosen.tried } };
  }
  const apart = apartDips(dye, chosen, [...set.apart, { ...swatch, ...dip }], handling, alone);
  const response = bathResponse(
    apart,
    uptake.referenceCelsius,
    uptake.activationEnergyJPerMol,
    !dye.activationEnergyAssumed,
  );
  return { ...model, response };
}

/**
 * The next swatch for the times of some colours: each candidate, between the shortest and the longest dip of a fresh
 * bath or, where no swatch was dipped in a weakened bath, at half strength, is tried with the colour that the curve
 * predicts, and the one that makes the intervals smallest wins. Undefined where none gains 5 %.
 */
export function nextSwatch(
  model: WithCurve,
  targets: readonly Lab[],
  handling: Handling,
): NextSwatch | undefined {
  const celsius = model.uptake.referenceCelsius;
  const times = ladder(handling.shortestSeconds, handling.longestSeconds, candidates);
  const strengths = model.chosen.curve.set.apart.some(({ strength }) => strength !== 1) ? [1] : [1, weakened];
  const { chosen, dye } = model;
  const { timingSeconds } = handling;
  const curves = doubtCurves(chosen, { timingSeconds });
  const alone = doubtCurves(
    { ...chosen, tried: chosen.tried.filter(({ law }) => law === chosen.curve.law) },
    { timingSeconds, givenRate: dye.ratePerSecond },
  );
  const now = width(model, targets, handling, curves);
  let best: NextSwatch | undefined;
  for (const strength of strengths)
    for (const seconds of times) {
      const dip = { seconds, strength, celsius };
      const more = withSwatch(model, dip, handling, alone);
      if (more === undefined) continue;
      const moreCurves = more.chosen === chosen ? curves : doubtCurves(more.chosen, { timingSeconds });
      const gain = 1 - width(more, targets, handling, moreCurves) / now;
      if (gain > (best?.gain ?? leastGain)) best = { dip, gain };
    }
  return best;
}

/**
 * The next swatch where no colour is asked for: the time at which one more reading adds most to the information on the
 * constants of the uptake law. The gain is that of their standard errors, in the mean.
 */
export function nextForLaw({ chosen, uptake }: WithCurve, handling: Handling): NextSwatch | undefined {
  const { law, ratePerSecond, referenceCelsius } = uptake;
  const slopes = (seconds: number): readonly number[] => {
    const x = ratePerSecond * seconds;
    return uptakeLaws[law].plateau ? [lawUptake(law, x), lawLogSlope(law, x)] : [lawUptake(law, x)];
  };
  const known = chosen.curve.set.swatches.map(({ seconds }) => seconds);
  const best = bestReading(slopes, known, handling.shortestSeconds, handling.longestSeconds);
  const seconds = handySeconds(best);
  const ratio = information(slopes, known) / information(slopes, [...known, seconds]);
  const gain = 1 - ratio ** (1 / (2 * slopes(seconds).length));
  return gain > leastGain ? { dip: { seconds, strength: 1, celsius: referenceCelsius }, gain } : undefined;
}
