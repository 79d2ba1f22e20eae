import type { Lab } from "../../model/batch.js";
import { labAfter } from "../swatches/shade-curve.js";
import type { WithCurve } from "./dye-model.js";
import { type NearestTime, nearestTime } from "./find-time.js";

/** A dyed part that goes on along the curve of its dye. */
export interface GoneOn {
  /** Where it is on the curve now. */
  readonly at: NearestTime;
  /** Its colour in the end: how it lies off the curve stays as it is. */
  readonly lab: Lab;
}

/** What a part becomes that goes on to a time of its dye's curve [s in a fresh bath]. */
export function goOn({ chosen: { curve }, longestSeconds }: WithCurve, part: Lab, toSeconds: number): GoneOn {
  const at = nearestTime(curve, part, 0, undefined, longestSeconds);
  const there = labAfter(curve, toSeconds);
  const off = (axis: 0 | 1 | 2): number => there[axis] + part[axis] - at.lab[axis];
  return { at, lab: [off(0), off(1), off(2)] };
}
