import { ciede2000 } from "../../core/colour/difference/ciede2000.js";
import { done, type Outcome, warning } from "../../core/fault.js";
import { halfWidth95 } from "../../core/maths/sampling/half-width-95.js";
import type { Batch, Lab } from "../../core/model/batch.js";
import { otherBase } from "../../core/uptake/shade/aim.js";
import type { WithCurve } from "../../core/uptake/shade/dye-model.js";
import { beyondSwatches, nearestTime } from "../../core/uptake/shade/find-time.js";
import { labAfter } from "../../core/uptake/swatches/shade-curve.js";
import { inRow } from "../read/in-row.js";
import type { LoadRow } from "../row/log-row.js";

/** Reading noise per CIELAB axis, one standard deviation; as for swatches. */
const readingNoise = 0.3;
/**
 * How exactly a thermometer in the bath is read, one standard deviation, as a share of the dye's pace [-]: about 0.3 K at
 * 80 °C and 60 kJ/mol. Common practice, no source.
 */
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

/** Farther from the dye's curve than any lot moves it, so that it is another colour [CIEDE2000]. Common practice, no source. */
const anotherColourFrom = 10;

/** A dip as short as this is a part without dye [s]. */
const bareUpTo = 0.5;

/** Where the colour moves less than this with ln of the time, it tells no time [CIEDE2000]. */
const leastSlope = 0.1;

const leftOut = (row: LoadRow, code: string, what: string, help: string): Outcome<undefined> =>
  done(undefined, [inRow(row.row!, "L", warning(code, [], `${what}: it teaches nothing`, help))]);

/**
 * The reading of a load on the curve of its dye; undefined where its colour was not read, where its base has no curve,
 * where the colour hardly moves with the time, and, with a warning, where it is not a colour of that dye.
 */
export function readingOf(model: WithCurve, batch: Batch, row: LoadRow): Outcome<LoadReading | undefined> {
  if (row.lab === undefined) return done(undefined);
  const base = batch.bases.find(({ name }) => name === row.base);
  const other = otherBase(model, base);
  if (!other.ok) return done(undefined);
  const { curve } = model.chosen;
  const colourOf = (freshSeconds: number): Lab => labAfter(curve, freshSeconds, other.value);
  const longest = Math.max(model.longestSeconds, beyondSwatches * curve.referenceSeconds);
  const { seconds, deltaE00 } = nearestTime(curve, row.lab, 0, other.value, longest);
  if (deltaE00 > anotherColourFrom)
    return leftOut(
      row,
      "log-another-colour",
      `the colour is ${deltaE00.toFixed(1)} CIEDE2000 from any that dye "${model.dye.name}" gives on this base`,
      "check the colour, the bath and the base of the row; another dye in the bath does this too",
    );
  if (!(seconds > bareUpTo))
    return leftOut(
      row,
      "log-bare-colour",
      "the colour is that of a part without dye",
      "check the colour; a bare part that was read has seconds 0",
    );
  const slope =
    ciede2000(colourOf(seconds * Math.exp(-step)), colourOf(seconds * Math.exp(step))) / (2 * step);
  if (!(slope > leastSlope)) return done(undefined);
  const noise = readingNoise / slope;
  const timing = batch.handling.timingSeconds / halfWidth95 / (row.seconds ?? seconds);
  return done({
    row,
    lab: row.lab,
    logFresh: Math.log(seconds),
    deviation: Math.hypot(noise, timing, paceNoise),
    swatchDeviation: noise,
    deltaE00PerLogTime: slope,
    colourOf,
  });
}
