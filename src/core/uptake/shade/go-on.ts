import type { Lab } from "../../model/batch.js";
import { labAfter } from "../swatches/shade-curve.js";
import type { WithCurve } from "./dye-model.js";
import { type LabAt, type NearestTime, nearestOn } from "./find-time.js";

/** A dyed part that goes on along the curve of its dye. */
export interface GoneOn {
  /** Where it is on the curve now. */
  readonly at: NearestTime;
  /** Its colour in the end: how it lies off the curve stays as it is. */
  readonly lab: Lab;
}

/** What a part becomes that goes on to a time of some path of colours [s in a fresh bath]. */
export function goOnAlong(labAt: LabAt, longestSeconds: number, part: Lab, toSeconds: number): GoneOn {
  const at = nearestOn(labAt, part, 0, longestSeconds);
  const there = labAt(toSeconds);
  const off = (axis: 0 | 1 | 2): number => there[axis] + part[axis] - at.lab[axis];
  return { at, lab: [off(0), off(1), off(2)] };
}

/** The same along a dye's curve. */
export const goOn = (
  { chosen: { curve }, longestSeconds }: WithCurve,
  part: Lab,
  toSeconds: number,
): GoneOn =>
  goOnAlong(
    (seconds) => labAfter(curve, seconds),
    Math.max(longestSeconds, curve.referenceSeconds),
    part,
    toSeconds,
  );
