import { error, type Fault, isError, warning } from "../../fault.js";
import { magnitudeFault } from "../../quantity/magnitude.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { UptakePoint } from "./fit-law.js";

const least = 3;

/** The place of a point: its row of the table, or its index in the list. */
const placeOf = (point: UptakePoint, index: number): readonly (string | number)[] =>
  point.row === undefined ? ["points", index] : ["row", point.row];

const nameOf = (point: UptakePoint, index: number): string =>
  point.row === undefined ? `point ${index + 1}` : `row ${point.row}`;

/** Also what to say of a plateau that comes out below 0. */
export const negativeUptake = error(
  "fit-negative-uptake",
  [],
  "uptake is below 0 at too many times for a plateau above 0",
  "count uptake from the undyed part",
);

const shown = (value: number): string => shortNumber(value, 6);

/** What keeps readings from being fitted, or makes a fit doubtful; every point is looked at. */
export function checkPoints(points: readonly UptakePoint[]): Fault[] {
  const faults = points.flatMap((point, index) => checkPoint(point, index, points[index - 1]));
  if (faults.some(isError)) return faults;
  if (points.length < least)
    return [
      ...faults,
      error(
        "fit-too-few",
        [],
        `${points.length} points: two constants need at least ${least}`,
        "dye more test pieces, half of them before the half time and one near the plateau",
      ),
    ];
  return [...faults, ...checkTogether(points)];
}

function checkPoint(point: UptakePoint, index: number, before: UptakePoint | undefined): Fault[] {
  const place = placeOf(point, index);
  const name = nameOf(point, index);
  if (!Number.isFinite(point.seconds) || !Number.isFinite(point.uptake))
    return [error("fit-not-finite", place, `${name}: time and uptake must be finite numbers`)];
  const size = magnitudeFault(point.seconds, place) ?? magnitudeFault(point.uptake, place);
  if (size !== undefined) return [{ ...size, message: `${name}: ${size.message}` }];
  if (point.seconds < 0)
    return [
      error("fit-negative-time", place, `${name}: time ${point.seconds} s is negative`, "count from the dip"),
    ];
  if (before !== undefined && point.seconds < before.seconds)
    return [
      warning(
        "fit-time-order",
        place,
        `${name}: time ${point.seconds} s comes after ${before.seconds} s`,
        "the order does not matter to the fit; check that the time is not a slip",
      ),
    ];
  return [];
}

function checkTogether(points: readonly UptakePoint[]): Fault[] {
  const uptakes = points.map(({ uptake }) => uptake);
  const [lowest, highest] = [
    uptakes.reduce((a, b) => Math.min(a, b)),
    uptakes.reduce((a, b) => Math.max(a, b)),
  ];
  if (highest - lowest <= 1e-12 * Math.max(Math.abs(lowest), Math.abs(highest)))
    return [
      error(
        "fit-all-equal",
        [],
        `all uptakes are ${shown(highest)}: nothing tells a rate`,
        "add shorter times",
      ),
    ];
  const levels = levelsByTime(points);
  if (levels.filter(({ seconds }) => seconds > 0).length < 2)
    return [error("fit-few-times", [], "all points share one time: nothing tells a rate", "add other times")];
  if (!(trend(levels) > 0))
    return [
      error(
        "fit-falls",
        [],
        "uptake falls over time: no uptake law does",
        "check that the columns are time and uptake, not reflectance or lightness, which fall as the shade deepens",
      ),
    ];
  if (!(levels.at(-1)!.uptake > 0)) return [negativeUptake];
  return [...fallsBetween(levels), ...startsAbove(levels, highest)];
}

/** Mean uptake at each different time, in order of time. */
function levelsByTime(points: readonly UptakePoint[]): UptakePoint[] {
  const groups = new Map<number, number[]>();
  for (const { seconds, uptake } of points) {
    const group = groups.get(seconds);
    if (group === undefined) groups.set(seconds, [uptake]);
    else group.push(uptake);
  }
  return [...groups]
    .map(([seconds, uptakes]) => ({ seconds, uptake: uptakes.reduce((a, b) => a + b, 0) / uptakes.length }))
    .sort((a, b) => a.seconds - b.seconds);
}

/** Covariance of uptake with the rank of its time: above 0 where uptake rises on the whole. */
function trend(levels: readonly UptakePoint[]): number {
  const middle = (levels.length - 1) / 2;
  return levels.reduce((sum, { uptake }, rank) => sum + (rank - middle) * uptake, 0);
}

function fallsBetween(levels: readonly UptakePoint[]): Fault[] {
  const falls = levels.flatMap((level, i) => {
    const before = levels[i - 1];
    return before !== undefined && level.uptake < before.uptake ? [{ before, level }] : [];
  });
  const first = falls[0];
  if (first === undefined) return [];
  const more = falls.length > 1 ? `, and so at ${falls.length} times` : "";
  return [
    warning(
      "fit-falls-between",
      [],
      `uptake falls from ${shown(first.before.uptake)} at ${first.before.seconds} s to ${shown(first.level.uptake)} at ` +
        `${first.level.seconds} s${more}: taken as noise`,
    ),
  ];
}

function startsAbove(levels: readonly UptakePoint[], highest: number): Fault[] {
  const first = levels[0]!;
  if (first.seconds > 0 || Math.abs(first.uptake) <= 0.02 * highest) return [];
  return [
    warning(
      "fit-start-not-zero",
      [],
      `uptake at time 0 is ${shown(first.uptake)}, where every law has 0`,
      "take the reading of the undyed part off all rows",
    ),
  ];
}
