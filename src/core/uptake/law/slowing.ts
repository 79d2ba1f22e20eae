import { strengthForUptake, uptakeAtStrength } from "./isotherm.js";
import { lawInverse, lawUptake } from "./laws.js";
import type { UptakeModel } from "./uptake-model.js";

type Slowed = Pick<UptakeModel, "law" | "ratePerSecond" | "saturation" | "strengthExponent">;

const middle = (a: number, b: number, c: number): number =>
  Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));

/**
 * How many times as long a dip takes at a strength as in a fresh bath, for the same depth [-].
 *
 * m(s) = s^-p with a measured exponent p; else the law's own ratio of times x(s)/x(1), g(x(s)) = g(x(1))/a(s), kept
 * between 1/a(s) and 1/a(s)². Uptake through a surface film goes with the strength and takes 1/a(s) times as long;
 * diffusion into a thick body goes with the strength and the root of time and takes 1/a(s)² times as long. A dip of
 * minutes lies between the two and ends at no plateau of the fibre, whatever its law says.
 * @param freshSeconds time [s] that gives the depth in a fresh bath at the reference temperature
 * @param strength s > 0, 1 in the fresh bath that the dye was measured in [-]
 * @source crank1975 chapter 3, short times
 * @example
 * slowing({ law: "parabolic", ratePerSecond: 0.01 }, 60, 0.5) // => 4
 * slowing({ law: "first-order", ratePerSecond: 1e-9 }, 60, 0.5) // => 2.000000
 * slowing({ law: "first-order", ratePerSecond: 0.05 }, 60, 0.5) // => 4
 * slowing({ law: "first-order", ratePerSecond: 0.05, strengthExponent: 1.5 }, 60, 0.25) // => 8
 */
export function slowing(model: Slowed, freshSeconds: number, strength: number): number {
  const { law, ratePerSecond, saturation, strengthExponent } = model;
  if (strengthExponent !== undefined) return strength ** -strengthExponent;
  const a = uptakeAtStrength(strength, saturation);
  const x = ratePerSecond * freshSeconds;
  const own = x > 0 ? (lawInverse(law, lawUptake(law, x) / a) ?? Number.POSITIVE_INFINITY) / x : 1 / a;
  return middle(1 / a, own, 1 / (a * a));
}

/**
 * The strength at which a dip takes so many times as long as in a fresh bath: `slowing` solved for the strength.
 * Undefined where no strength does.
 * @example
 * strengthForSlowing({ law: "parabolic", ratePerSecond: 0.01 }, 60, 4) // => 0.5
 * strengthForSlowing({ law: "first-order", ratePerSecond: 0.05 }, 60, 4) // => 0.5
 * strengthForSlowing({ law: "first-order", ratePerSecond: 0.05, strengthExponent: 1.5 }, 60, 8) // => 0.2500000000
 */
export function strengthForSlowing(model: Slowed, freshSeconds: number, ratio: number): number | undefined {
  const { law, ratePerSecond, saturation, strengthExponent } = model;
  if (strengthExponent !== undefined) return ratio ** (-1 / strengthExponent);
  const x = ratePerSecond * freshSeconds;
  // Each of the three ratios falls with the strength, so that the middle one is inverted by the middle inverse.
  const own = x > 0 ? lawUptake(law, x) / lawUptake(law, x * ratio) : 1 / ratio;
  return strengthForUptake(middle(1 / ratio, own, ratio ** -0.5), saturation);
}

/**
 * The time in a fresh bath that gives the same depth as a time at a strength, both at one temperature: `slowing`
 * solved for the fresh time [s].
 * @example
 * freshSecondsAtStrength({ law: "parabolic", ratePerSecond: 0.01 }, 240, 0.5) // => 60
 * freshSecondsAtStrength({ law: "first-order", ratePerSecond: 0.05 }, 240, 0.5) // => 60
 */
export function freshSecondsAtStrength(model: Slowed, seconds: number, strength: number): number {
  const { law, ratePerSecond, saturation, strengthExponent } = model;
  if (strengthExponent !== undefined) return seconds * strength ** strengthExponent;
  const a = uptakeAtStrength(strength, saturation);
  const x = lawInverse(law, a * lawUptake(law, ratePerSecond * seconds));
  const own = x === undefined ? Number.POSITIVE_INFINITY : x / ratePerSecond;
  return middle(a * seconds, own, a * a * seconds);
}
