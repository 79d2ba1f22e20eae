import { type EwmaSetting, ewma, ewmaHalfWidth, usualEwma } from "./ewma.js";
import { type ControlLimits, individualsLimits, usualReadings } from "./individuals-limits.js";
import { breaksRule } from "./run-rules.js";

/** What shows that a reading is not chance: the reading alone, or the moving average up to it. */
export type ChartSignal = "reading" | "average";

/** A reading on its chart. */
export interface ChartPoint {
  readonly value: number;
  readonly ewma: number;
  /** The lower one is null where only an excess counts. */
  readonly ewmaLimits: readonly [lower: number | null, upper: number];
  readonly signals: readonly ChartSignal[];
}

/** Readings one after the other that are out of control on the same side. */
export interface OutRun {
  /** Places of the first and the last of them, from 0. */
  readonly first: number;
  readonly last: number;
  readonly side: "above" | "below";
  /**
   * Where the shift seems to have begun: the first reading after the average was last on the other side of the centre,
   * or the first of the run where that is earlier.
   */
  readonly since: number;
  readonly signals: readonly ChartSignal[];
}

export interface ControlChart {
  readonly limits: ControlLimits;
  readonly points: readonly ChartPoint[];
  readonly runs: readonly OutRun[];
}

/** How a chart is drawn. */
export interface ChartOptions {
  /** Readings that the limits rest on: 20. */
  readonly readings?: number;
  /** Only an excess is out of control, as of a difference that is never below 0. */
  readonly upperOnly?: boolean;
  readonly setting?: EwmaSetting;
}

const sideOf = (value: number, centre: number): OutRun["side"] => (value < centre ? "below" : "above");

/** Where a shift that shows at a place began: behind the last average on the other side of the centre. */
function beginOf(points: readonly ChartPoint[], at: number, side: OutRun["side"], centre: number): number {
  let since = at;
  while (since > 0 && sideOf(points[since - 1]!.ewma, centre) === side) since--;
  return since;
}

/** Groups points that are out of control one after the other on one side. */
function runsOf(points: readonly ChartPoint[], { centre }: ControlLimits): OutRun[] {
  const runs: OutRun[] = [];
  for (const [at, { signals, value, ewma: average }] of points.entries()) {
    if (signals.length === 0) continue;
    const side = sideOf(signals.includes("reading") ? value : average, centre);
    // A single reading that is far out says nothing of those before it.
    const since = signals.includes("average") ? beginOf(points, at, side, centre) : at;
    const before = runs.at(-1);
    if (before === undefined || before.last !== at - 1 || before.side !== side)
      runs.push({ first: at, last: at, side, since, signals });
    else
      runs[runs.length - 1] = {
        ...before,
        last: at,
        since: Math.min(before.since, since),
        signals: [...new Set([...before.signals, ...signals])],
      };
  }
  return runs;
}

/**
 * Individuals chart and moving average of the same readings: a reading is out of control beyond 3 σ, or where the
 * average up to it is beyond its own limits. Limits come from the first readings, so these must be of a time in which
 * nothing was changed. Undefined for fewer than two readings.
 * @param values readings in the order of time [any unit]
 * @source nistHandbook sections 6.3.2.2 and 6.3.2.4
 * @source nishina1992 where the shift began
 * @example controlChart([0, 1, 0, 1, 0, 1, 0, 1, 9], { readings: 8 }).runs[0].first // => 8
 * @example controlChart([0, 1, 0, 1, 0, 1, 0, 1, -9], { readings: 8, upperOnly: true }).runs // => []
 */
export function controlChart(
  values: readonly number[],
  { readings = usualReadings, upperOnly = false, setting = usualEwma }: ChartOptions = {},
): ControlChart | undefined {
  const limits = individualsLimits(values, readings);
  if (limits === undefined) return undefined;
  const { centre, sigma } = limits;
  const averages = ewma(values, centre, setting.lambda);
  const points = values.map((value, i): ChartPoint => {
    const average = averages[i]!;
    const half = ewmaHalfWidth(sigma, i + 1, setting);
    const counts = (deviation: number): boolean => !upperOnly || deviation > 0;
    const reading = breaksRule([(value - centre) / sigma], "beyond") && counts(value - centre);
    const moved = Math.abs(average - centre) > half && counts(average - centre);
    return {
      value,
      ewma: average,
      ewmaLimits: [upperOnly ? null : centre - half, centre + half],
      signals: [...(reading ? (["reading"] as const) : []), ...(moved ? (["average"] as const) : [])],
    };
  });
  return { limits, points, runs: runsOf(points, limits) };
}
