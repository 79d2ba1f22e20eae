import { labToLch } from "../../core/colour/cielab.js";
import { ciede2000 } from "../../core/colour/difference/ciede2000.js";
import type { Lab } from "../../core/model/colour.js";
import { controlChart } from "../../core/quality/control-chart.js";
import { usualReadings } from "../../core/quality/individuals-limits.js";
import type { ReviewPoint, ReviewRun } from "../../core/quality/review/review-model.js";
import type { LoadRow } from "../row/log-row.js";
import { likelyCause } from "./likely-cause.js";

/** A load of a bath whose colour was read, and what its shade should look like. */
export interface JudgedLoad {
  readonly row: LoadRow;
  readonly lab: Lab;
  readonly target: Lab;
  readonly strength: number;
  /** Of the dip, over the time that the learned figures ask for. */
  readonly timeRatio: number;
}

/** Limits rest on the first readings, as long as all are of one powder lot. */
function limitReadings(loads: readonly JudgedLoad[]): number {
  const lot = loads[0]?.row.powderLot;
  const other = loads.findIndex(({ row }) => row.powderLot !== lot);
  return Math.max(2, Math.min(usualReadings, other < 0 ? usualReadings : other));
}

/** Differences of a bath's loads from their shades in the order of time, and what is out of control among them. */
export function bathPoints(
  loads: readonly JudgedLoad[],
  celsius: number,
): { readonly points: readonly ReviewPoint[]; readonly runs: readonly ReviewRun[] } {
  const lightness = loads.map(({ lab, target }) => lab[0] - target[0]);
  const readings = limitReadings(loads);
  const chart = controlChart(lightness, { readings });
  const points = loads.map(({ row, lab, target }, i): ReviewPoint => {
    const [chroma, wanted] = [labToLch(lab)[1], labToLch(target)[1]];
    const deltaC = chroma - wanted;
    const apart = Math.hypot(lab[1] - target[1], lab[2] - target[2]);
    const turn = target[1] * lab[2] - target[2] * lab[1];
    const at = chart?.points[i];
    return {
      time: row.time.text,
      shade: row.shade ?? "",
      deltaE00: ciede2000(target, lab),
      deltaL: lightness[i]!,
      deltaC,
      deltaH: Math.sign(turn) * Math.sqrt(Math.max(0, apart ** 2 - deltaC ** 2)),
      individualsLimits: chart === undefined ? null : [chart.limits.lower, chart.limits.upper],
      ewma: at?.ewma ?? null,
      ewmaLimits: at === undefined ? null : [at.ewmaLimits[0]!, at.ewmaLimits[1]],
      out: (at?.signals.length ?? 0) > 0,
    };
  });
  const runs = (chart?.runs ?? []).map(
    (run): ReviewRun => ({
      from: loads[run.since]!.row.time.text,
      to: loads[run.last]!.row.time.text,
      loads: run.last - run.since + 1,
      side: run.side === "above" ? "lighter" : "darker",
      ...likelyCause(loads, run, { celsius, limitReadings: readings }),
    }),
  );
  return { points, runs };
}
