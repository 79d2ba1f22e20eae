/** What a rule sees of an order. */
export interface OrderFacts {
  /** Days until it is due, from the first day; infinite where it has no due date. */
  readonly dueDays: number;
  /** A bath of its dye is on today: it takes no further set-up and clean-up. */
  readonly isOn: boolean;
  readonly areaDm2: number;
  /** Position of its dye. */
  readonly dyePlace: number;
  readonly depth: number;
  /** In the order of the files. */
  readonly place: number;
}

/** Below 0 where the first of two orders is taken first. */
type Comparison = (a: OrderFacts, b: OrderFacts) => number;

/** In which order a day takes what waits. */
export interface Rule {
  /** In words, after "each day takes whole orders as long as they fit into it: ". */
  readonly said: string;
  readonly compare: Comparison;
  /** A bath is set up only on a day that holds all that waits for it, as long as there is such a bath. */
  readonly wholeBaths: boolean;
}

const byDue: Comparison = (a, b) => (a.dueDays === b.dueDays ? 0 : a.dueDays - b.dueDays);
const bySetUp: Comparison = (a, b) => Number(b.isOn) - Number(a.isOn);
const byArea: Comparison = (a, b) => b.areaDm2 - a.areaDm2;
const lightFirst: Comparison = (a, b) => a.dyePlace - b.dyePlace || a.depth - b.depth || a.place - b.place;

const inTurn =
  (...comparisons: readonly Comparison[]): Comparison =>
  (a, b) => {
    for (const compare of comparisons) {
      const found = compare(a, b);
      if (found !== 0) return found;
    }
    return 0;
  };

/**
 * Rules that are tried one after the other; the first of those that serve best is taken. Due dates come first where they
 * press; the others save clean-ups where they do not.
 */
export const rules: readonly Rule[] = [
  {
    said: "earliest due date first, then what needs no further clean-up, then light before dark in a bath",
    compare: inTurn(byDue, bySetUp, lightFirst),
    wholeBaths: false,
  },
  {
    said: "what needs no further clean-up first, then the earliest due date, then light before dark in a bath",
    compare: inTurn(bySetUp, byDue, lightFirst),
    wholeBaths: false,
  },
  {
    said: "what needs no further clean-up first, then the largest order, then light before dark in a bath",
    compare: inTurn(bySetUp, byArea, lightFirst),
    wholeBaths: false,
  },
  {
    said: "only baths for which it holds all that waits, the earliest due date first",
    compare: inTurn(byDue, lightFirst),
    wholeBaths: true,
  },
];
