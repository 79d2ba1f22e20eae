import { numericJacobian } from "../../../src/core/maths/least-squares/jacobian.js";
import {
  solveLeastSquares,
  unitStandardErrorOf,
} from "../../../src/core/maths/least-squares/linear-least-squares.js";
import type { Batch } from "../../../src/core/model/batch.js";
import { type FigureName, figureNames } from "../../../src/core/quality/estimates/figures.js";
import { dyeLog, logFresh } from "../../../src/log/review/dye-log.js";
import type { LoadReading } from "../../../src/log/review/dye-readings.js";
import { drawnTruth, seeded, shared, type Truth, work } from "./workshop.js";

/** How far the figures of invented workshops scatter, of their logarithms. */
const drawn: Readonly<Record<FigureName, number>> = {
  timeFactor: 0.15,
  uptakePerDm2: 2.6 / Math.sqrt(12),
  dragOutMlPerDm2: 0.5,
  strengthExponent: 0.2,
  activationEnergyJPerMol: 0.2,
  evaporation: 0.07,
};

/** Noise of the fresh time that a reading shows, of its logarithm: colour 0.3 an axis, a hand 1 s, a thermometer 0.3 K. */
function deviationOf(
  { row, logFresh, colourOf }: LoadReading,
  energyJPerMol: number,
  celsius: number,
): number {
  const [low, high] = [-0.05, 0.05].map((by) => colourOf(Math.exp(logFresh + by)));
  const slope = Math.hypot(...low!.map((value, i) => value - high![i]!)) / 0.1;
  return Math.hypot(0.3 / slope, 1 / row.seconds!, (0.3 * energyJPerMol) / 8.314 / (celsius + 273.15) ** 2);
}

const levelNoise = 0.003;

/**
 * The Cramér-Rao bound of a workshop, with what is known of all workshops as further data: the least standard deviation
 * with which its log can tell ln of the times of the next ten loads, in the mean, where these figures are not known.
 */
export function boundOf(
  batch: Batch,
  seed: number,
  loads: number,
  free: readonly FigureName[] = figureNames,
): number {
  const { dye, tank } = batch.baths[0]!;
  const truth = drawnTruth(seeded(seed), batch);
  const again = () => seeded(seed + 7919);
  const log = dyeLog(batch, dye, work(batch, truth, again(), { loads }).rows, shared);
  if (!log.ok) throw new Error(JSON.stringify(log.faults));
  const { readings, follow } = log.value;
  const deviations = readings.map((one) => deviationOf(one, truth.activationEnergyJPerMol, dye.celsius));
  const at = (z: readonly number[]): Truth => ({
    ...truth,
    ...Object.fromEntries(free.map((name, i) => [name, truth[name] * Math.exp(drawn[name] * z[i]!)])),
  });
  const readAt = (z: readonly number[]): number[] => [
    ...logFresh(readings, follow(at(z))).map((value, i) => value / deviations[i]!),
    ...follow(at(z)).flatMap(({ after }) =>
      after.flatMap(({ level }) =>
        level === undefined ? [] : [(level.readL - level.foreseenL) / (levelNoise * tank.volumeL)],
      ),
    ),
    ...z,
  ];
  const none = free.map(() => 0);
  const jacobian = numericJacobian(
    readAt,
    none,
    free.map(() => 1),
  );
  const next = (z: readonly number[]): number => {
    const planned = work(batch, truth, again(), { loads: loads + 10, before: loads, planned: at(z) });
    return planned.askedOff.slice(loads).reduce((sum, value) => sum + value, 0) / 10;
  };
  // Times are asked for in whole seconds, so that the step is a wide one.
  const step = 0.5;
  const slopes = free.map((_, i) => (next(none.with(i, step)) - next(none.with(i, -step))) / (2 * step));
  return unitStandardErrorOf(solveLeastSquares(jacobian, readAt(none))!.r, slopes);
}
