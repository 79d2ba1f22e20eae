import type { LawName } from "../../model/batch.js";

/** The laws in the order in which the simpler one wins a tie. */
export const lawNames: readonly LawName[] = ["first-order", "second-order", "parabolic", "cegarra-puente"];

/**
 * Uptake relative to the plateau: g(x) with x = k t, k the rate [1/s] and t the time [s].
 *
 * first-order 1 - exp(-x); second-order x/(1+x); parabolic sqrt(x); cegarra-puente sqrt(1 - exp(-x)).
 * The parabolic law is the short-time limit of diffusion into a thick part: it has no plateau and
 * follows the diffusion of a plane sheet to 0.3 % up to 55 % of its plateau. Valid for x >= 0.
 * @source lagergren1898 first-order
 * @source hoMckay1999 second-order
 * @source crank1975 parabolic: equation 4.20
 * @source cegarraPuente1967 cegarra-puente
 * @example
 * lawUptake("first-order", 0.5) // => 0.393469340287
 * lawUptake("second-order", 0.5) // => 0.333333333333
 * lawUptake("parabolic", 0.25) // => 0.5
 * lawUptake("cegarra-puente", 0.5) // => 0.627271345
 */
export function lawUptake(law: LawName, x: number): number {
  switch (law) {
    case "first-order":
      return -Math.expm1(-x);
    case "second-order":
      return 1 / (1 + 1 / x);
    case "parabolic":
      return Math.sqrt(x);
    case "cegarra-puente":
      return Math.sqrt(-Math.expm1(-x));
  }
}

/**
 * The x = k t at which a law reaches an uptake, relative to the plateau; undefined where it never does.
 * @example
 * lawInverse("second-order", 0.75) // => 3
 * lawInverse("first-order", 1) // => undefined
 * lawInverse("parabolic", 1.5) // => 2.25
 */
export function lawInverse(law: LawName, uptake: number): number | undefined {
  if (law === "parabolic") return uptake * uptake;
  if (!(uptake < 1)) return undefined;
  switch (law) {
    case "first-order":
      return -Math.log1p(-uptake);
    case "second-order":
      return uptake / (1 - uptake);
    case "cegarra-puente":
      return -Math.log1p(-uptake * uptake);
  }
}

/**
 * Slope of a law over the logarithm of its argument: dg/d(ln x) = x g'(x); finite at x = 0, where g' may not be.
 * @example
 * lawLogSlope("first-order", 1) // => 0.367879441171
 * lawLogSlope("second-order", 1) // => 0.25
 * lawLogSlope("parabolic", 4) // => 1
 * lawLogSlope("cegarra-puente", 0) // => 0
 */
export function lawLogSlope(law: LawName, x: number): number {
  switch (law) {
    case "first-order":
      return x * Math.exp(-x);
    case "second-order":
      return x / (1 + x) ** 2;
    case "parabolic":
      return Math.sqrt(x) / 2;
    case "cegarra-puente":
      return x === 0 ? 0 : (x * Math.exp(-x)) / (2 * Math.sqrt(-Math.expm1(-x)));
  }
}
