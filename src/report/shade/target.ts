import { duration } from "../../core/quantity/text/duration.js";
import { labText } from "../../core/quantity/text/lab-text.js";
import type { ShadeTime } from "../../core/uptake/shade/shade-time.js";
import type { WayOut } from "../../core/uptake/shade/slower-dip.js";
import type { DoubtFrom } from "../../core/uptake/shade/time-doubt.js";
import { degrees, percent } from "../words/amounts.js";

const dE = (value: number): string => `${value.toFixed(1)} CIEDE2000`;

function wayOutText({ strength, celsius, seconds }: WayOut): string {
  const ways = [
    ...(strength !== undefined && strength < 1 ? [`a bath of ${percent(strength)} strength`] : []),
    ...(celsius !== undefined && celsius > 30 ? [`a bath of ${degrees(celsius)}`] : []),
  ];
  return ways.length === 0
    ? ""
    : ` ${ways.join(" or ")} would bring it to ${duration(seconds)}.`.replace(/^ a/, " A");
}

/** What is largest in an interval, and what would make it smaller. */
const doubtWords: Readonly<Record<DoubtFrom, string>> = {
  readings: "the readings of the swatches",
  timing: "the timing of the swatches",
  law: "the choice of uptake law",
  strength:
    "how this dye answers to the strength of the bath\u2020; a trial dip, or a swatch from a weakened bath, tells it",
  temperature:
    "how this dye answers to the temperature of the bath\u2020; a swatch from a cooler bath tells it",
  trial: "the reading and timing of the trial",
};

/** Noise that a good colorimeter has, per CIELAB axis. */
const goodNoise = 0.3;

function intervalSentences({ interval95, intervalFrom, noise }: ShadeTime, assumed: boolean): string[] {
  if (interval95 === null || intervalFrom === null) return [];
  const words = doubtWords[intervalFrom];
  const noisy =
    noise !== null && noise > goodNoise
      ? ` The swatches disagree as if read to ${noise.toFixed(1)} per CIELAB axis.`
      : "";
  return [
    `In 95 of 100 cases the right time is between ${duration(interval95[0])} and ${duration(interval95[1])}; most of that is ${assumed ? words : words.replace(/\u2020.*/, "")}.${noisy}`,
  ];
}

/** The answer in sentences, the time first: what to do, how sure it is, and every reason to doubt it. */
export function targetSentences(target: ShadeTime, assumed: boolean): string[] {
  const { seconds, windowSeconds: window } = target;
  if (target.lab === null || target.deltaE00 === null)
    return [
      `Dip ${duration(seconds)} for ${target.name}. Its colour is not known: one swatch tells only its own.`,
    ];
  if (!target.reachable)
    return [
      `This dye does not reach ${target.name}: the nearest colour of its curve is ${labText(target.lab)}, after ${duration(seconds)}, ${dE(target.deltaE00)} away, over the tolerance of ${target.tolerance}.`,
      "Take a colour from the curve, another dye, or a wider tolerance.",
    ];
  const said = [
    `Dip ${duration(seconds)} for ${target.name}: ${labText(target.lab)}, ${dE(target.deltaE00)} from the target (tolerance ${target.tolerance}).`,
  ];
  if (window)
    said.push(
      window[1] === null
        ? `Within tolerance from ${duration(window[0])} on.`
        : `Within tolerance from ${duration(window[0])} to ${duration(window[1])}.`,
    );
  if (target.slopePerSecond !== null)
    said.push(`The shade moves ${target.slopePerSecond.toPrecision(2)} CIEDE2000 a second there.`);
  said.push(...intervalSentences(target, assumed));
  const wayOut = target.wayOut ? wayOutText(target.wayOut) : "";
  if (target.tooQuick) said.push(`That is too short to time by hand.${wayOut}`);
  else if (target.tooNarrow) said.push(`That window is too narrow to hit by hand.${wayOut}`);
  if (target.tooLong) said.push("That is over the longest dip.");
  if (target.extrapolated)
    said.push("It lies beyond the longest swatch: extrapolated, so dip and read one there.");
  return said;
}
