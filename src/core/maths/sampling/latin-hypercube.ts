import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import type { JumpableRandomGenerator } from "pure-rand/types/JumpableRandomGenerator";

/** Orders of its parts that are tried for an input: the one least correlated with the inputs before is kept. */
const tries = 8;

/** A number strictly between 0 and 1 out of 32 random bits: neither end can come up. */
const between = (bits: number): number => ((bits >>> 0) + 0.5) / 2 ** 32;

function shuffled(draws: number, random: JumpableRandomGenerator): number[] {
  const strata = Array.from({ length: draws }, (_, stratum) => stratum);
  for (let last = draws - 1; last > 0; last--) {
    const other = uniformInt(random, 0, last);
    [strata[last], strata[other]] = [strata[other]!, strata[last]!];
  }
  return strata;
}

/** Greatest correlation, of either sign, with one of the orders before, times what all orders have in common. */
function likeness(order: readonly number[], before: readonly (readonly number[])[]): number {
  const middle = (order.length - 1) / 2;
  return before.reduce((most, other) => {
    let sum = 0;
    for (let i = 0; i < order.length; i++) sum += (order[i]! - middle) * (other[i]! - middle);
    return Math.max(most, Math.abs(sum));
  }, 0);
}

/**
 * A Latin hypercube: for every input as many numbers as draws, one in each of that many equal parts of 0..1,
 * in random order. `columns[input][draw]`; neither 0 nor 1 ever comes up.
 *
 * Of a few random orders the one least correlated with the inputs before is taken. Each input has its own
 * stretch of the random sequence, so a further input at the end changes none before it.
 * Valid up to a million draws; `seed` is a whole number.
 * @source mckay1979 section 2
 * @example
 * latinHypercube(4, 1, 7)[0].map((u) => Math.floor(4 * u)).sort() // => [0, 1, 2, 3]
 */
export function latinHypercube(draws: number, inputs: number, seed: number): number[][] {
  const source = xoroshiro128plus(seed);
  const orders: number[][] = [];
  return Array.from({ length: inputs }, () => {
    source.jump();
    const random = source.clone();
    const tried = Array.from({ length: orders.length === 0 ? 1 : tries }, () => shuffled(draws, random));
    const measured = tried.map((order) => likeness(order, orders));
    const order = tried[measured.indexOf(Math.min(...measured))]!;
    orders.push(order);
    return order.map((stratum) => (stratum + between(random.next())) / draws);
  });
}
