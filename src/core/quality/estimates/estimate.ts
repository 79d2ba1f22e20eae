import { fitWithPriors } from "../../maths/least-squares/fit-with-priors.js";
import {
  type FigureName,
  type Figures,
  figureNames,
  type Learnable,
  learnable,
  type Prior,
  type Priors,
} from "./figures.js";

/** What a log says of one figure. */
export interface Estimated {
  /** The assumed one where the log cannot tell. */
  readonly value: number;
  readonly standardError: number;
  readonly told: boolean;
  /** Further loads after which the standard error is half of what it is; null where no number of them does it. */
  readonly loadsToHalve: number | null;
}

/** What was read, and what figures make of it: differences in units of their standard deviation. */
export interface Evidence {
  /** Loads whose colour was read. */
  readonly readings: number;
  readonly residuals: (figures: Figures) => readonly number[];
}

export interface Estimates {
  readonly figures: Readonly<Record<Learnable, Estimated>>;
  /** With told figures as they are told, and the others as assumed. */
  readonly toUse: Figures;
}

/** An estimate is told with a standard error under this share of the value, and under that share of the assumption's own. */
const mostOfValue = 1 / 3;
const mostOfPrior = 1 / 2;

/** More loads than anybody dips to learn a figure. */
const mostLoads = 10_000;

const startOf = ({ deviation, startDeviation }: Prior): number => startDeviation ?? deviation;

/** Figures where some are fitted, in units of their prior's deviation, some fixed, and the others held. */
function figuresAt(
  priors: Priors,
  free: readonly FigureName[],
  z: readonly number[],
  fixed: Partial<Figures> = {},
): Figures {
  const at = (name: FigureName): number => {
    const place = free.indexOf(name);
    const { value } = priors[name];
    return place < 0 ? (fixed[name] ?? value) : value * Math.exp(startOf(priors[name]) * z[place]!);
  };
  const exponent = free.includes("strengthExponent") || fixed.strengthExponent !== undefined;
  return {
    timeFactor: at("timeFactor"),
    uptakePerDm2: at("uptakePerDm2"),
    dragOutMlPerDm2: at("dragOutMlPerDm2"),
    ...(exponent ? { strengthExponent: at("strengthExponent") } : {}),
    activationEnergyJPerMol: at("activationEnergyJPerMol"),
    evaporation: at("evaporation"),
  };
}

/** Loads that bring the standard error from `left` to its half, where so many brought it there from 1 (the prior's own). */
function loadsToHalve(left: number, readings: number): number | null {
  const fromData = 1 / left ** 2 - 1;
  const loads = Math.ceil((3 / left ** 2 / fromData) * readings);
  return readings > 0 && fromData > 0.01 && loads <= mostLoads ? loads : null;
}

/**
 * Figures of a dye by least squares over all that was read, with what is known of them before as further data. Those that
 * the log does not tell stay as assumed; the time factor is then that which goes with them.
 * @source gelman2013 a prior as further data
 */
export function estimate(evidence: Evidence, priors: Priors): Estimates {
  const fitted = (free: readonly FigureName[], fixed: Partial<Figures>) => {
    const at = (z: readonly number[]) => figuresAt(priors, free, z, fixed);
    const fit = fitWithPriors((z) => evidence.residuals(at(z)), free.length);
    // More scatter than reading, timing and swatches explain makes every figure so much less certain.
    const widened = Math.sqrt(Math.max(1, fit.meanSquare ?? 1));
    return { left: fit.standardErrors.map((error) => Math.min(1, error * widened)), at: at(fit.parameters) };
  };
  const all = fitted(figureNames, {});
  const leftOf = (name: Learnable): number => all.left[figureNames.indexOf(name)]!;
  /** Standard error over the value. */
  const relative = (name: Learnable): number => leftOf(name) * startOf(priors[name]);
  const isTold = (name: Learnable): boolean =>
    relative(name) < mostOfPrior * priors[name].deviation && relative(name) < mostOfValue;
  const told = learnable.filter(isTold);
  const fixed = Object.fromEntries(told.map((name) => [name, all.at[name]])) as Partial<Figures>;
  const { timeFactor: _, ...others } = fixed;
  const toUse = told.includes("timeFactor")
    ? { ...fitted(["timeFactor", "evaporation"], others).at, evaporation: 1 }
    : figuresAt(priors, [], [], others);
  const of = (name: Learnable): Estimated => {
    const { value, deviation, held } = priors[name];
    const isIt = told.includes(name);
    // How far the figures that are held pull it away from where all of them free would have it.
    const pulled = name === "timeFactor" && isIt ? Math.log(toUse.timeFactor / all.at.timeFactor) : 0;
    const best = isIt ? (name === "timeFactor" ? toUse : all.at)[name]! : (held ?? value);
    return {
      value: best,
      // What is not told is as uncertain as the assumption, at most.
      standardError: best * (isIt ? Math.hypot(relative(name), pulled) : Math.min(deviation, relative(name))),
      told: isIt,
      loadsToHalve: loadsToHalve(leftOf(name), evidence.readings),
    };
  };
  const entries = learnable.map((name) => [name, of(name)] as const);
  return { figures: Object.fromEntries(entries) as unknown as Estimates["figures"], toUse };
}
