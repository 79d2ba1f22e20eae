import { ciede2000, ciede2000Components } from "../../colour/difference/ciede2000.js";
import { boundedLeastSquares } from "../../maths/least-squares/bounded-least-squares.js";
import type { Handling, Lab } from "../../model/batch.js";
import { freshDepth } from "../../uptake/law/uptake-model.js";
import { carriedMl } from "../carry-over/carried-strength.js";
import { carryOverShift } from "../carry-over/carry-over.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { labOfDepths, mixtureOf } from "../mixture/mixture.js";
import { setsOf } from "../solve/find-recipes.js";

/** One dip after another in the fresh baths of two dyes, each at its own temperature. */
export interface TwoDips {
  readonly dips: readonly { readonly dye: MixDye; readonly seconds: number }[];
  readonly lab: Lab;
  readonly deltaE00: number;
  /** What the first bath does to the second in this order, and in the other, for the same liquor carried [CIEDE2000]. */
  readonly shift: number;
  readonly shiftOtherwise: number;
}

/** Colours of a lower L* than this are called dark. */
export const darkBelow = 40;

/** Liquor that parts bring from the first bath into the second, by which the two orders are compared. */
const carried = { carriedMl, bathMl: 5000, rinseMl: 0 };

const starts = [
  [0.2, 0.2],
  [0.2, 0.8],
  [0.8, 0.2],
  [0.8, 0.8],
] as const;

/**
 * The two dips that come nearest to a colour, of all pairs of dyes: K/S = base + A_1 D_1(t_1) + A_2 D_2(t_2). The model says
 * the same of both orders; the one is taken in which the first bath does less harm to the second.
 */
export function bestTwoDips(
  dyes: readonly MixDye[],
  target: Lab,
  { shortestSeconds, longestSeconds }: Pick<Handling, "shortestSeconds" | "longestSeconds">,
): TwoDips | undefined {
  const [low, high] = [Math.log(shortestSeconds), Math.log(longestSeconds)];
  let best:
    | { readonly pair: readonly MixDye[]; readonly times: readonly number[]; readonly lab: Lab }
    | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const pair of setsOf(dyes, 2)) {
    const mixture = mixtureOf(pair, longestSeconds);
    const after = (times: ArrayLike<number>): Lab =>
      labOfDepths(
        mixture,
        pair.map(({ model }, i) => freshDepth(model.uptake, Math.exp(times[i]!))),
      );
    for (const start of starts) {
      const { parameters, residualSum } = boundedLeastSquares({
        residuals: (times, out) => ciede2000Components(target, after(times), out),
        count: 3,
        start: start.map((part) => low + part * (high - low)),
        low: [low, low],
        high: [high, high],
      });
      if (residualSum >= least) continue;
      least = residualSum;
      best = { pair, times: Array.from(parameters, Math.exp), lab: after(parameters) };
    }
  }
  if (best === undefined) return undefined;
  const dips = best.pair.map((dye, i) => ({ dye, seconds: best.times[i]! }));
  const fresh = ({ dye }: (typeof dips)[number]) => ({ name: dye.name, dyes: [dye], strengths: [1] });
  const shiftOf = (first: (typeof dips)[number], second: (typeof dips)[number]): number =>
    carryOverShift(fresh(first), fresh(second), second.seconds, carried);
  const [there, back] = [shiftOf(dips[0]!, dips[1]!), shiftOf(dips[1]!, dips[0]!)];
  return {
    dips: there <= back ? dips : dips.toReversed(),
    lab: best.lab,
    deltaE00: ciede2000(target, best.lab),
    shift: Math.min(there, back),
    shiftOtherwise: Math.max(there, back),
  };
}
