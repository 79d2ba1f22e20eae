import type { LawName } from "../../model/batch.js";

/** One uptake law: g(x), uptake relative to the plateau, over x = k t; k the rate [1/s], t the time [s]. */
export interface UptakeLaw {
  /** g(x), x >= 0. */
  readonly uptake: (x: number) => number;
  /** The x at which g(x) is an uptake; undefined where g never gets there. */
  readonly inverse: (uptake: number) => number | undefined;
  /** x g'(x), finite at x = 0, where g' may not be. */
  readonly logSlope: (x: number) => number;
  /** Whether uptake comes to an end. A law without one has a single constant: uptake = constant x sqrt(time). */
  readonly plateau: boolean;
  /** The x from which g no longer differs from its plateau in a fit; 1 without a plateau. */
  readonly settledAt: number;
}

/** Inverse of a law whose uptake stays under 1. */
const below1 =
  (inverse: (uptake: number) => number) =>
  (uptake: number): number | undefined =>
    uptake < 1 ? inverse(uptake) : undefined;

/**
 * The uptake laws in the order in which the simpler one wins a tie.
 *
 * The parabolic law is the short-time limit of diffusion into a thick part: it has no plateau and follows the
 * diffusion of a plane sheet to 0.3 % up to 55 % of its plateau.
 * @source lagergren1898 first-order
 * @source hoMckay1999 second-order
 * @source crank1975 parabolic: equation 4.20
 * @source cegarraPuente1967 cegarra-puente
 */
export const uptakeLaws: Readonly<Record<LawName, UptakeLaw>> = {
  "first-order": {
    uptake: (x) => -Math.expm1(-x),
    inverse: below1((uptake) => -Math.log1p(-uptake)),
    logSlope: (x) => x * Math.exp(-x),
    plateau: true,
    settledAt: 36,
  },
  "second-order": {
    uptake: (x) => 1 / (1 + 1 / x),
    inverse: below1((uptake) => uptake / (1 - uptake)),
    logSlope: (x) => x / (1 + x) ** 2,
    plateau: true,
    settledAt: 1e4,
  },
  parabolic: {
    uptake: Math.sqrt,
    inverse: (uptake) => uptake * uptake,
    logSlope: (x) => Math.sqrt(x) / 2,
    plateau: false,
    settledAt: 1,
  },
  "cegarra-puente": {
    uptake: (x) => Math.sqrt(-Math.expm1(-x)),
    inverse: below1((uptake) => -Math.log1p(-uptake * uptake)),
    logSlope: (x) => (x === 0 ? 0 : (x * Math.exp(-x)) / (2 * Math.sqrt(-Math.expm1(-x)))),
    plateau: true,
    settledAt: 36,
  },
};

/** The names of the laws, in their order. */
export const lawNames = Object.keys(uptakeLaws) as readonly LawName[];

/**
 * Uptake relative to the plateau: g(x) with x = k t, k the rate [1/s] and t the time [s].
 *
 * first-order 1 - exp(-x); second-order x/(1+x); parabolic sqrt(x); cegarra-puente sqrt(1 - exp(-x)).
 * Valid for x >= 0.
 * @example
 * lawUptake("first-order", 0.5) // => 0.393469340287
 * lawUptake("second-order", 0.5) // => 0.333333333333
 * lawUptake("parabolic", 0.25) // => 0.5
 * lawUptake("cegarra-puente", 0.5) // => 0.627271345
 */
export const lawUptake = (law: LawName, x: number): number => uptakeLaws[law].uptake(x);

/**
 * The x = k t at which a law reaches an uptake, relative to the plateau; undefined where it never does.
 * @example
 * lawInverse("second-order", 0.75) // => 3
 * lawInverse("first-order", 1) // => undefined
 * lawInverse("parabolic", 1.5) // => 2.25
 */
export const lawInverse = (law: LawName, uptake: number): number | undefined =>
  uptakeLaws[law].inverse(uptake);

/**
 * Slope of a law over the logarithm of its argument: dg/d(ln x) = x g'(x); finite at x = 0, where g' may not be.
 * @example
 * lawLogSlope("first-order", 1) // => 0.367879441171
 * lawLogSlope("second-order", 1) // => 0.25
 * lawLogSlope("parabolic", 4) // => 1
 * lawLogSlope("cegarra-puente", 0) // => 0
 */
export const lawLogSlope = (law: LawName, x: number): number => uptakeLaws[law].logSlope(x);
