/** What a year of one colour costs and earns. */
export interface ColourYear {
  /** Mean that a good part leaves before its bath and set-up are paid. */
  readonly contribution: number;
  /** Set-up, clean-up and heating of a batch. */
  readonly perBatch: number;
  /** Good parts in a batch. */
  readonly batch: number;
  /** Dye and water of a fresh bath, and getting rid of it. */
  readonly perMakeUp: number;
  /** Baths that age takes in a year; at least 1. */
  readonly makeUpsByAge: number;
  /** Good parts that a bath dyes before it is worn; endless where dye alone does not end it. */
  readonly partsPerMakeUp: number;
  /** Paid once: a tank, a jug. */
  readonly once: number;
}

/**
 * What a colour earns in a year: N (c - perBatch/batch) - max(makeUpsByAge, N/partsPerMakeUp) perMakeUp - once.
 *
 * All in money but for the counts; batches are full. Common practice, no source.
 * @param parts N: good parts sold in the year
 * @example
 * yearlyProfit(200, { contribution: 3, perBatch: 20, batch: 10, perMakeUp: 30, makeUpsByAge: 4, partsPerMakeUp: 1000, once: 0 }) // => 80
 */
export const yearlyProfit = (parts: number, year: ColourYear): number =>
  parts * (year.contribution - year.perBatch / year.batch) -
  Math.max(year.makeUpsByAge, parts / year.partsPerMakeUp) * year.perMakeUp -
  year.once;

/**
 * Good parts a year from which a colour has earned its baths, set-ups and what is paid once: `yearlyProfit` solved for
 * zero. Undefined where no quantity pays. Common practice, no source.
 * @example
 * yearlyBreakEven({ contribution: 3, perBatch: 20, batch: 10, perMakeUp: 30, makeUpsByAge: 4, partsPerMakeUp: 1000, once: 0 }) // => 120
 * yearlyBreakEven({ contribution: 3, perBatch: 20, batch: 10, perMakeUp: 30, makeUpsByAge: 4, partsPerMakeUp: 25, once: 0 }) // => undefined
 */
export function yearlyBreakEven(year: ColourYear): number | undefined {
  const each = year.contribution - year.perBatch / year.batch;
  const byAge = (year.makeUpsByAge * year.perMakeUp + year.once) / each;
  if (!(each > 0)) return undefined;
  if (byAge <= year.makeUpsByAge * year.partsPerMakeUp) return whole(byAge);
  const byWear = each - year.perMakeUp / year.partsPerMakeUp;
  return byWear > 0 ? whole(year.once / byWear) : undefined;
}

/** A quotient that arithmetic left a hair above a whole number is that number. */
const whole = (parts: number): number => Math.ceil(parts * (1 - 1e-12));
