import { ciede2000 } from "../../core/colour/difference/ciede2000.js";
import { halfWidth95 } from "../../core/maths/sampling/half-width-95.js";
import type { Batch, Lab } from "../../core/model/batch.js";
import { otherBase } from "../../core/uptake/shade/aim.js";
import type { WithCurve } from "../../core/uptake/shade/dye-model.js";
import { beyondSwatches, nearestTime } from "../../core/uptake/shade/find-time.js";
import { labAfter } from "../../core/uptake/swatches/shade-curve.js";
import type { LoadRow } from "../row/log-row.js";

/** Reading noise per CIELAB axis, one standard deviation; as for swatches. */
const readingNoise = 0.3;
/** How exactly a thermometer in the bath is read, one standard deviation, as a share of the dye's pace. */
const paceNoise = 0.02;

/** A load whose colour was read, as the curve of its dye sees it. */
export interface LoadReading {
  readonly row: LoadRow;
  readonly lab: Lab;
  /** ln of the time in a fresh bath that gives the colour nearest to it [s]. */
  readonly logFresh: number;
  /** Of that logarithm, from reading and timing. */
  readonly deviation: number;
  /** How the same shift of all readings of a shade moves it, from the swatches' own noise. */
  readonly swatchDeviation: number;
  /** By which the colour moves with ln of the time. */
  readonly deltaE00PerLogTime: number;
  /** What a dip of a fresh time looks like on the load's base. */
  readonly colourOf: (freshSeconds: number) => Lab;
}

/** A step of ln t over which a slope is taken. */
const step = 0.05;

/** The reading of a load on the curve of its dye; undefined where its colour was not read, or its base has no curve. */
export function readingOf(model: WithCurve, batch: Batch, row: LoadRow): LoadReading | undefined {
  if (row.lab === undefined) return undefined;
  const base = batch.bases.find(({ name }) => name === row.base);
  const other = otherBase(model, base);
  if (!other.ok) return undefined;
  const { curve } = model.chosen;
  const colourOf = (freshSeconds: number): Lab => labAfter(curve, freshSeconds, other.value);
  const longest = Math.max(model.longestSeconds, beyondSwatches * curve.referenceSeconds);
  const { seconds } = nearestTime(curve, row.lab, 0, other.value, longest);
  if (!(seconds > 0.5)) return undefined;
  const slope =
    ciede2000(colourOf(seconds * Math.exp(-step)), colourOf(seconds * Math.exp(step))) / (2 * step);
  if (!(slope > 0.1)) return undefined;
  const noise = readingNoise / slope;
  const timing = batch.handling.timingSeconds / halfWidth95 / (row.seconds ?? seconds);
  return {
    row,
    lab: row.lab,
    logFresh: Math.log(seconds),
    deviation: Math.hypot(noise, timing, paceNoise),
    swatchDeviation: noise,
    deltaE00PerLogTime: slope,
    colourOf,
  };
}
