import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A number strictly between 0 and 1 out of 32 random bits: neither end can come up. */
const between = (bits: number): number => ((bits >>> 0) + 0.5) / 2 ** 32;

/**
 * A Latin hypercube: for every input as many numbers as draws, one in each of that many equal parts of 0..1,
 * in random order. `columns[input][draw]`; neither 0 nor 1 ever comes up.
 *
 * Each input has its own stretch of the random sequence, so a further input at the end changes none before it.
 * Valid up to a million draws; `seed` is a whole number.
 * @source mckay1979 section 2
 * @example
 * latinHypercube(4, 1, 7)[0].map((u) => Math.floor(4 * u)).sort() // => [0, 1, 2, 3]
 */
export function latinHypercube(draws: number, inputs: number, seed: number): number[][] {
  const source = xoroshiro128plus(seed);
  return Array.from({ length: inputs }, () => {
    source.jump();
    const random = source.clone();
    const strata = Array.from({ length: draws }, (_, stratum) => stratum);
    for (let last = draws - 1; last > 0; last--) {
      const other = uniformInt(random, 0, last);
      [strata[last], strata[other]] = [strata[other]!, strata[last]!];
    }
    return strata.map((stratum) => (stratum + between(random.next())) / draws);
  });
}
