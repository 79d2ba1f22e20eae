import { done, error, type Fault, isError, type Outcome, warning } from "../../fault.js";
import type { LawName } from "../../model/batch.js";
import { lawInverse, lawNames, uptakeLaws } from "../law/laws.js";
import { aicc } from "./aicc.js";
import { checkPoints, negativeUptake } from "./check-points.js";
import { fitLaw, type UptakePoint } from "./fit-law.js";
import { openEnds } from "./open-ends.js";

/** Constants of one law. `rate` is per second; plateau in the unit of the uptakes. */
export interface UptakeFit {
  readonly law: LawName;
  /** Undefined where the points leave the rate of this law open: see `limit`. */
  readonly parameters: { readonly plateau: number; readonly rate: number } | undefined;
  /** The rate of the parabolic law is held at 1/(longest time) and has none. */
  readonly standardErrors: { readonly plateau: number; readonly rate: number | undefined } | undefined;
  /** Seconds to half the plateau; undefined for the parabolic law, which has none. */
  readonly halfTime: number | undefined;
  readonly residualSum: number;
  /** Undefined with too few points for the law's constants. */
  readonly aicc: number | undefined;
  /** What the law is at the open end: a short-time law still rising, or all points on the plateau. */
  readonly limit: "still-rising" | "already-level" | undefined;
}

/** The best law, or the one asked for, and all four beside it, in the order of `lawNames`. */
export interface UptakeFits extends UptakeFit {
  readonly bestLaw: LawName;
  readonly perLaw: readonly UptakeFit[];
  readonly points: number;
}

/**
 * Fits the four uptake laws to readings of time and uptake and names the best by AICc; `wanted` asks for one law.
 *
 * With fewer than five points AICc is not defined for all laws; then the smallest residual variance S/(n - p)
 * decides, with a warning. Where a straight line from 0 or a level leaves no more residual variance than the
 * best law, the points tell no rate, and the fault says which times are missing.
 * @example
 * fitUptake([20, 40, 80, 160, 320].map((seconds) => ({ seconds, uptake: 1 - Math.exp(-0.01 * seconds) }))).value.law // => "first-order"
 */
export function fitUptake(points: readonly UptakePoint[], wanted?: LawName): Outcome<UptakeFits> {
  const faults = checkPoints(points);
  if (faults.some(isError)) return { ok: false, faults };
  const highest = points.reduce((most, { uptake }) => Math.max(most, Math.abs(uptake)), 0);
  const rounding = points.length * (Number.EPSILON * highest) ** 2;
  const perLaw = lawNames.map((law) => describe(law, points, rounding));
  const compared = perLaw.every((fit) => fit.aicc !== undefined);
  const variance = (sum: number, constants: number): number =>
    Math.max(sum, rounding) / (points.length - constants);
  const score = (fit: UptakeFit): number =>
    compared ? fit.aicc! : variance(fit.residualSum, constantsOf(fit.law));
  const closed = perLaw.filter(({ limit }) => limit === undefined);
  const best = closed.reduce((first, next) => (score(next) < score(first) ? next : first));
  const least = variance(best.residualSum, constantsOf(best.law));
  const end = openEnds(points).find(({ residualSum }) => variance(residualSum, 1) <= least);
  if (end !== undefined) return { ok: false, faults: [...faults, end.fault] };
  const fit = perLaw.find(({ law }) => law === wanted) ?? best;
  if (fit.limit !== undefined)
    return { ok: false, faults: [...faults, openLaw(fit.law, fit.limit, best.law)] };
  if (!(fit.parameters!.plateau > 0)) return { ok: false, faults: [...faults, negativeUptake] };
  return done({ ...fit, bestLaw: best.law, perLaw, points: points.length }, [
    ...faults,
    ...doubts(fit, points, wanted !== undefined),
  ]);
}

const openLaw = (law: LawName, limit: "still-rising" | "already-level", best: LawName): Fault =>
  error(
    "fit-law-open",
    [],
    `the points leave the rate of the ${law} law open: to it they are ${limit === "still-rising" ? "all far from" : "all on"} the plateau`,
    `add ${limit === "still-rising" ? "longer" : "shorter"} times, or take the ${best} law, which fits`,
  );

const constantsOf = (law: LawName): number => (uptakeLaws[law].plateau ? 2 : 1);

function describe(law: LawName, points: readonly UptakePoint[], rounding: number): UptakeFit {
  const fit = fitLaw(law, points);
  const half = lawInverse(law, 0.5);
  return {
    law,
    parameters: fit.determined ? { plateau: fit.plateau, rate: fit.ratePerSecond } : undefined,
    standardErrors: fit.determined ? { plateau: fit.plateauError, rate: fit.rateError } : undefined,
    halfTime: fit.determined && uptakeLaws[law].plateau ? half! / fit.ratePerSecond : undefined,
    residualSum: fit.residualSum,
    aicc: aicc({
      residualSum: Math.max(fit.residualSum, rounding),
      points: points.length,
      parameters: constantsOf(law),
    }),
    limit: fit.determined ? undefined : fit.limit,
  };
}

function doubts(best: UptakeFit, points: readonly UptakePoint[], asked: boolean): Fault[] {
  const faults: Fault[] = [];
  if (points.length < 5)
    faults.push(
      warning(
        "fit-few-points",
        [],
        asked
          ? `with ${points.length} points little checks the law`
          : `with ${points.length} points the law is chosen by residual variance and little checks it`,
        "use five points or more",
      ),
    );
  const rateError = best.standardErrors?.rate;
  if (rateError !== undefined && rateError > 0.5 * best.parameters!.rate)
    faults.push(
      warning(
        "fit-rate-unsure",
        [],
        `the standard error of the rate is ${Math.round((100 * rateError) / best.parameters!.rate)} % of it`,
        "add points around the half time and near the plateau",
      ),
    );
  const longest = points.reduce((most, { seconds }) => Math.max(most, seconds), 0);
  if (best.halfTime !== undefined && best.halfTime > longest)
    faults.push(
      warning(
        "fit-plateau-extrapolated",
        [],
        "half of the plateau is reached only after the longest time: the plateau is an extrapolation",
        "add longer times",
      ),
    );
  return faults;
}
