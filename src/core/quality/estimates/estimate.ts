import { fitWithPriors } from "../../maths/least-squares/fit-with-priors.js";
import { type Figures, figureNames, type Learnable, learnable, type Prior, type Priors } from "./figures.js";

/** What a log says of one figure. */
export interface Estimated {
  /** As the batch file has it where the log cannot tell. */
  readonly value: number;
  readonly standardError: number;
  readonly told: boolean;
  /** The exponent that a told uptake was found with, and is used with, where the log does not tell it. */
  readonly withUptake?: number;
  /** Further loads after which the standard error is half of what it is; null where no number of them does it. */
  readonly loadsToHalve: number | null;
}

/** What was read, and what figures make of it: differences in units of their standard deviation. */
export interface Evidence {
  /** Loads whose colour was read. */
  readonly readings: number;
  readonly residuals: (figures: Figures) => readonly number[];
  /**
   * How far the next loads go wrong where the sheet has other figures than the bath: ln of the fresh time that each gets
   * over the one that it should have, in the mean.
   */
  readonly nextLoadsOff: (sheet: Figures, really: Figures) => number;
}

export interface Estimates {
  readonly figures: Readonly<Record<Learnable, Estimated>>;
  /** For plans: told figures as they are told, the others as assumed. */
  readonly toUse: Figures;
  /** All figures as they fit the log best, whether it tells them or not. */
  readonly best: Required<Figures>;
}

/** An estimate is told with a standard error under this share of the value, and under that share of the assumption's own. */
const mostOfValue = 1 / 3;
const mostOfPrior = 1 / 2;

/** A time factor is used from this share of its standard error on. */
const leastOfError = 1 / 2;

/** More loads than anybody dips to learn a figure. */
const mostLoads = 10_000;

const startOf = ({ deviation, startDeviation }: Prior): number => startDeviation ?? deviation;

/** All figures, in units of their prior's deviation. */
const figuresAt = (priors: Priors, z: readonly number[]): Required<Figures> =>
  Object.fromEntries(
    figureNames.map((name, i) => [name, priors[name].value * Math.exp(startOf(priors[name]) * z[i]!)]),
  ) as unknown as Required<Figures>;

/** Loads that bring the standard error from `left` to its half, where so many brought it there from 1 (the prior's own). */
function loadsToHalve(left: number, readings: number): number | null {
  const fromData = 1 / left ** 2 - 1;
  const loads = Math.ceil((3 / left ** 2 / fromData) * readings);
  return readings > 0 && fromData > 0.01 && loads <= mostLoads ? loads : null;
}

const mostRounds = 20;

/**
 * ln of the time factor that makes the next loads right by a sheet of some figures in a bath of others; where none does, as
 * in a bath that one load empties, the nearest one that was tried.
 */
function matchedLogFactor(off: Evidence["nextLoadsOff"], sheet: Figures, really: Figures): number {
  let logFactor = Math.log(really.timeFactor);
  let [nearest, leastOff] = [logFactor, Number.POSITIVE_INFINITY];
  // A longer dip takes up more dye, so that the bath behind it changes too.
  for (let round = 0; round < mostRounds && leastOff >= 1e-9; round++) {
    const by = off({ ...sheet, timeFactor: Math.exp(logFactor) }, really);
    if (Math.abs(by) < leastOff) [nearest, leastOff] = [logFactor, Math.abs(by)];
    logFactor -= by;
  }
  return nearest;
}

/**
 * Figures of a dye by least squares over all that was read, with what is known of them before as further data. Those that
 * the log does not tell stay as assumed. The time factor goes with them: it makes the times of the next loads as right as
 * all figures together would, since a bath that weakens answers to figures that nobody can tell apart.
 * @source gelman2013 a prior as further data
 */
export function estimate(evidence: Evidence, priors: Priors): Estimates {
  const at = (z: readonly number[]) => figuresAt(priors, z);
  const fit = fitWithPriors((z) => evidence.residuals(at(z)), figureNames.length);
  // More scatter than reading, timing and swatches explain makes every figure so much less certain.
  const widened = Math.sqrt(Math.max(1, fit.meanSquare ?? 1));
  const best = at(fit.parameters);
  // Over a standard error upwards: a large uptake weakens a bath far more than a small one, so that a tangent says too little.
  const slopes = fit.parameters.map((value, i) => {
    const step = widened * fit.standardErrors[i]!;
    return evidence.nextLoadsOff(best, at(fit.parameters.with(i, value + step))) / step;
  });
  /** Of the logarithm. */
  const errorOf = (name: Learnable): number => {
    const start = startOf(priors[name]);
    // Slopes of 0: the bath has no dye for a next load, so that only the loads before say how sure the factor is.
    if (name === "timeFactor" && evidence.readings > 0 && slopes.some((slope) => slope !== 0)) {
      // A slope is not a number where figures a standard error away are beyond any bath.
      return slopes.every(Number.isFinite) ? Math.min(start, widened * fit.standardErrorOf(slopes)) : start;
    }
    return start * Math.min(1, widened * fit.standardErrors[figureNames.indexOf(name)]!);
  };
  const isTold = (name: Learnable): boolean =>
    errorOf(name) < mostOfPrior * priors[name].deviation && errorOf(name) < mostOfValue;
  const planned = (name: Exclude<Learnable, "strengthExponent">): number =>
    isTold(name) ? best[name] : priors[name].value;
  // Uptake and exponent are nearly one figure: one that is told is right only with the exponent that it was found with.
  const assumesExponent = priors.strengthExponent.held !== undefined;
  const withExponent = isTold("strengthExponent") || (isTold("uptakePerDm2") && assumesExponent);
  const others: Figures = {
    timeFactor: 1,
    uptakePerDm2: planned("uptakePerDm2"),
    dragOutMlPerDm2: planned("dragOutMlPerDm2"),
    ...(withExponent ? { strengthExponent: best.strengthExponent } : {}),
    activationEnergyJPerMol: planned("activationEnergyJPerMol"),
    evaporation: 1,
  };
  const matched = isTold("timeFactor") ? matchedLogFactor(evidence.nextLoadsOff, others, best) : 0;
  // As the bath goes on changing, what stays as assumed pulls further.
  const factorError = Math.hypot(errorOf("timeFactor"), matched - Math.log(best.timeFactor));
  const factorTold = isTold("timeFactor") && factorError < mostOfValue;
  const logFactor = factorTold ? matched : 0;
  const of = (name: Learnable): Estimated => {
    const { value, deviation, held } = priors[name];
    const isFactor = name === "timeFactor";
    const told = isFactor ? factorTold : isTold(name);
    const withUptake = !told && name === "strengthExponent" && withExponent;
    const its = told ? (isFactor ? Math.exp(logFactor) : best[name]) : (held ?? value);
    const error = isFactor ? factorError : errorOf(name);
    return {
      value: its,
      // What is not told is as uncertain as the assumption, at most.
      standardError: its * (told ? error : Math.min(deviation, error)),
      told,
      ...(withUptake ? { withUptake: best[name] } : {}),
      loadsToHalve: loadsToHalve(errorOf(name) / startOf(priors[name]), evidence.readings),
    };
  };
  const entries = learnable.map((name) => [name, of(name)] as const);
  return {
    figures: Object.fromEntries(entries) as unknown as Estimates["figures"],
    // A factor much nearer to 1 than its own standard error changes nothing: what it would correct may be chance.
    toUse:
      Math.abs(logFactor) > leastOfError * errorOf("timeFactor")
        ? { ...others, timeFactor: Math.exp(logFactor) }
        : others,
    best,
  };
}
