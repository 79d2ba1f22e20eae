import { usualReadings } from "../../../core/quality/individuals-limits.js";
import type { ReviewBath, ReviewPoint, ReviewRun } from "../../../core/quality/review/review-model.js";
import { chartLoads, differences } from "./drift.js";
import type { JudgedLoad } from "./judged-load.js";
import { likelyCause } from "./likely-cause.js";

/** Limits rest on the first readings, as long as all are of one powder lot. */
function limitReadings(loads: readonly JudgedLoad[]): number {
  const lot = loads[0]?.row.powderLot;
  const other = loads.findIndex(({ row }) => row.powderLot !== lot);
  return Math.max(2, Math.min(usualReadings, other < 0 ? usualReadings : other));
}

/** Differences of a bath's loads from their shades in the order of time, their charts, and what is out of control on them. */
export function bathPoints(
  loads: readonly JudgedLoad[],
  celsius: number,
): Pick<ReviewBath, "points" | "charts" | "runs"> {
  const all = loads.map(({ lab, target }) => differences(target, lab));
  const readings = limitReadings(loads);
  const { lightness, charts, drifts } = chartLoads(all, readings);
  const out = new Set(charts.flatMap((chart) => chart.out));
  const points = loads.map(({ row }, i): ReviewPoint => {
    const at = lightness?.points[i];
    return {
      time: row.time.text,
      shade: row.shade ?? "",
      ...all[i]!,
      individualsLimits: lightness === undefined ? null : [lightness.limits.lower, lightness.limits.upper],
      ewma: at?.ewma ?? null,
      ewmaLimits: at === undefined ? null : [at.ewmaLimits[0]!, at.ewmaLimits[1]],
      out: out.has(i),
    };
  });
  const runs = drifts.map((drift): ReviewRun => {
    const { since, last, sides } = drift;
    return {
      from: loads[since]!.row.time.text,
      to: loads[last]!.row.time.text,
      loads: last - since + 1,
      sides,
      ...likelyCause(loads, drift, { celsius, limitReadings: readings }),
    };
  });
  return { points, charts, runs };
}
