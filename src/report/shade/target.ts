import { duration } from "../../core/quantity/text/duration.js";
import type { ShadeTime } from "../../core/uptake/shade/describe-shade.js";
import type { WayOut } from "../../core/uptake/shade/slower-dip.js";
import { degrees, percent } from "../words/amounts.js";

const dE = (value: number): string => `${value.toFixed(1)} CIEDE2000`;
const lab = (values: readonly number[]): string => `L ${values.map((value) => value.toFixed(1)).join(", ")}`;

function wayOutText({ strength, celsius, seconds }: WayOut): string {
  const ways = [
    ...(strength !== undefined && strength < 1 ? [`a bath of ${percent(strength)} strength`] : []),
    ...(celsius !== undefined && celsius > 30 ? [`a bath of ${degrees(celsius)}`] : []),
  ];
  return ways.length === 0
    ? ""
    : ` ${ways.join(" or ")} would bring it to ${duration(seconds)}.`.replace(/^ a/, " A");
}

/** The answer in sentences, the time first: what to do, how sure it is, and every reason to doubt it. */
export function targetSentences(target: ShadeTime): string[] {
  const { seconds, windowSeconds: window, interval95: interval } = target;
  if (!target.reachable)
    return [
      `This dye does not reach ${target.name}: the nearest colour of its curve is ${lab(target.lab)}${seconds === null ? "" : `, after ${duration(seconds)}`}, ${dE(target.deltaE00)} away, over the tolerance of ${target.tolerance}.`,
      "Take a colour from the curve, another dye, or a wider tolerance.",
    ];
  if (seconds === null)
    return [`The bath is too weak for ${target.name} at any time.`, "Strengthen it, or make it up fresh."];
  const said = [
    `Dip ${duration(seconds)} for ${target.name}: ${lab(target.lab)}, ${dE(target.deltaE00)} from what is wanted (tolerance ${target.tolerance}).`,
  ];
  if (window)
    said.push(
      window[1] === null
        ? `Within tolerance from ${duration(window[0])} on.`
        : `Within tolerance from ${duration(window[0])} to ${duration(window[1])}.`,
    );
  if (target.slopePerSecond !== null)
    said.push(`The shade moves ${target.slopePerSecond.toPrecision(2)} CIEDE2000 a second there.`);
  if (interval)
    said.push(
      `For noise of ${(target.noise ?? 0).toFixed(1)} per CIELAB axis (${target.noise !== null && target.noise > 0.3 ? "what the swatches show among themselves" : "a good colorimeter"}) and the choice of law, the true time lies between ${duration(interval[0])} and ${interval[1] === null ? "any time" : duration(interval[1])} in 95 of 100 cases.`,
    );
  const wayOut = target.wayOut ? wayOutText(target.wayOut) : "";
  if (target.tooQuick) said.push(`That is too quick for the hand.${wayOut}`);
  else if (target.tooNarrow) said.push(`That window is too narrow for the hand.${wayOut}`);
  if (target.tooLong) said.push("That is over the longest dip.");
  if (target.extrapolated)
    said.push("It lies beyond the longest swatch: extrapolated, so dip and read one there.");
  return said;
}
