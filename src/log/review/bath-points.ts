import { labToLch } from "../../core/colour/cielab.js";
import { ciede2000 } from "../../core/colour/difference/ciede2000.js";
import type { Lab } from "../../core/model/colour.js";
import { controlChart, type OutRun } from "../../core/quality/control-chart.js";
import { usualReadings } from "../../core/quality/individuals-limits.js";
import type { ReviewPoint, ReviewRun } from "../../core/quality/review/review-model.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import type { LoadRow } from "../row/log-row.js";

/** A load of a bath whose colour was read, and what its shade should look like. */
export interface JudgedLoad {
  readonly row: LoadRow;
  readonly lab: Lab;
  readonly target: Lab;
  readonly strength: number;
  /** Of the dip, over the time that the learned figures ask for. */
  readonly timeRatio: number;
}

/** How far a mean must be off before it is called the cause. Common practice, no source. */
const kelvinMatters = 1;
const strengthMatters = 0.05;
const timeMatters = 0.05;

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Why a run of loads is off, as far as their rows show it. */
function causeOf(
  loads: readonly JudgedLoad[],
  run: OutRun,
  celsius: number,
): Pick<ReviewRun, "cause" | "said"> {
  const its = loads.slice(run.since, run.last + 1);
  const before = loads[run.since - 1]?.row;
  const first = its[0]!.row;
  for (const [name, of] of [
    ["powder", first.powderLot],
    ["dye", first.dyeLot],
  ] as const) {
    const old = name === "powder" ? before?.powderLot : before?.dyeLot;
    if (of !== undefined && old !== undefined && of !== old)
      return { cause: "new lot", said: `${name} lot ${of} begins there` };
  }
  const read = its.flatMap(({ row }) => (row.celsius === undefined ? [] : [row.celsius]));
  const off = read.length === 0 ? 0 : mean(read) - celsius;
  if (Math.abs(off) >= kelvinMatters)
    return {
      cause: "temperature",
      said: `the bath was ${shortNumber(Math.abs(off), 2)} °C too ${off < 0 ? "cool" : "warm"}`,
    };
  const time = mean(its.map(({ timeRatio }) => timeRatio));
  if (Math.abs(time - 1) >= timeMatters)
    return {
      cause: "time",
      said: `dips were ${Math.round(100 * Math.abs(time - 1))} % ${time < 1 ? "shorter" : "longer"} than the bath needed`,
    };
  const strength = mean(its.map((one) => one.strength));
  if (Math.abs(strength - 1) >= strengthMatters)
    return { cause: "strength", said: `the bath was at ${Math.round(100 * strength)} % strength` };
  return { cause: "not known", said: "nothing that was logged explains it" };
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
  const chart = controlChart(lightness, { readings: limitReadings(loads) });
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
      ...causeOf(loads, run, celsius),
    }),
  );
  return { points, runs };
}
