import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Dye } from "../../model/batch.js";
import { daysBetween } from "../../quantity/days.js";
import type { BathBook } from "../day/bath-book.js";
import { type DaySetting, type TriedDay, tryDay } from "../day/try-day.js";
import type { Piece, WeekWish } from "../week-model.js";
import type { OrderFacts, Rule } from "./rules.js";

/** A day that is to be filled. */
interface EmptyDay extends Pick<WeekWish, "from" | "dayMinutes"> {
  readonly date: string;
  readonly book: BathBook;
  readonly rule: Rule;
}

/** What a day holds, and what is left for others. */
interface FilledDay {
  readonly day: TriedDay;
  readonly left: readonly Piece[];
}

type DyesOn = ReadonlySet<Dye>;

const dyeOf = ({ order }: Piece): Dye => order.order.shade.dye;

/** More than a file has orders, so that those of a file stay together. */
const moreThanOrders = 1e6;

/** What a rule sees of a piece. */
const factsOf = ({ shop }: DaySetting, from: string, on: DyesOn, piece: Piece): OrderFacts => {
  const { order, file, number, depth } = piece.order;
  return {
    dueDays: order.due === undefined ? Number.POSITIVE_INFINITY : daysBetween(from, order.due),
    isOn: on.has(dyeOf(piece)),
    areaDm2: piece.quantity * order.part.areaDm2,
    dyePlace: shop.dyes.indexOf(dyeOf(piece)),
    depth,
    place: file * moreThanOrders + number,
  };
};

/** Pieces that go onto a day together or not at all. */
type Unit = readonly Piece[];

/** The unit that the rule takes first, where these dyes are on. */
function firstOf(setting: DaySetting, { from, rule }: EmptyDay, on: DyesOn, units: readonly Unit[]): Unit {
  const facts = (piece: Piece): OrderFacts => factsOf(setting, from, on, piece);
  const first = (unit: Unit): OrderFacts =>
    unit.map(facts).reduce((best, one) => (rule.compare(one, best) < 0 ? one : best));
  return units.reduce((best, one) => (rule.compare(first(one), first(best)) < 0 ? one : best));
}

const singly = (pieces: readonly Piece[]): Unit[] => pieces.map((piece) => [piece]);

/** All that waits for a dye, together. */
const byDye = (pieces: readonly Piece[]): Unit[] =>
  [...new Set(pieces.map(dyeOf))].map((dye) => pieces.filter((piece) => dyeOf(piece) === dye));

/** Whether racking and unloading its parts alone takes longer than a day: then no day need be tried with it. */
const isSurelyLonger = ({ shop }: DaySetting, { dayMinutes }: EmptyDay, { quantity }: Piece): boolean =>
  quantity * (shop.handling.loadPartSeconds + shop.handling.unloadPartSeconds) > 60 * dayMinutes;

const fits = ({ minutes }: TriedDay, { dayMinutes }: EmptyDay): boolean => minutes <= dayMinutes * (1 + 1e-9);

/** Takes the units that fit, in the order of the rule, beside what is on already. */
function addUnits(
  setting: DaySetting,
  empty: EmptyDay,
  already: readonly Piece[],
  units: readonly Unit[],
): Outcome<{ readonly day?: TriedDay; readonly taken: readonly Piece[] }> {
  const taken: Piece[] = [];
  let day: TriedDay | undefined;
  let untried = units;
  while (untried.length > 0) {
    const on = [...already, ...taken];
    const next = firstOf(setting, empty, new Set(on.map(dyeOf)), untried);
    untried = untried.filter((one) => one !== next);
    if (next.some((piece) => isSurelyLonger(setting, empty, piece))) continue;
    const tried = tryDay(setting, [...on, ...next], empty.book, empty.date);
    if (!tried.ok) return tried;
    if (!fits(tried.value, empty)) continue;
    taken.push(...next);
    day = tried.value;
  }
  return done({ ...(day === undefined ? {} : { day }), taken });
}

/**
 * Fills a day with whole orders. Where the one that comes first is longer than a day, the day takes as many of its parts
 * as it can, and then others beside them.
 */
export function fillDay(setting: DaySetting, empty: EmptyDay, pieces: readonly Piece[]): Outcome<FilledDay> {
  const [first] = firstOf(setting, empty, new Set(), singly(pieces)) as [Piece];
  const alone = addUnits(setting, empty, [], [[first]]);
  if (!alone.ok) return alone;
  let filled = alone.value.day && { day: alone.value.day, taken: alone.value.taken };
  if (filled === undefined) return splitFirst(setting, empty, first, pieces);
  for (const units of empty.rule.wholeBaths ? [singly(pieces), byDye(pieces)] : [singly(pieces)]) {
    const whole = addUnits(setting, empty, [], units);
    if (!whole.ok) return whole;
    const { day, taken } = whole.value;
    if (day !== undefined) filled = { day, taken };
  }
  const { day, taken } = filled;
  const left = pieces.filter((one) => !taken.includes(one));
  return beginNext(setting, empty, { day, taken }, left);
}

/**
 * Begins the order that comes next in what is left of a day, where it is longer than a day and its bath is on already: so it
 * needs no further set-up.
 */
function beginNext(
  setting: DaySetting,
  empty: EmptyDay,
  { day, taken }: { readonly day: TriedDay; readonly taken: readonly Piece[] },
  left: readonly Piece[],
): Outcome<FilledDay> {
  const asItIs = done({ day, left });
  if (left.length === 0) return asItIs;
  const on = new Set(taken.map(dyeOf));
  const [next] = firstOf(setting, empty, on, singly(left)) as [Piece];
  if (!on.has(dyeOf(next))) return asItIs;
  const alone = addUnits(setting, empty, [], [[next]]);
  if (!alone.ok) return alone;
  if (alone.value.day !== undefined) return asItIs;
  const split = mostOf(setting, empty, taken, next);
  if (!split.ok) return split;
  if (split.value === undefined) return asItIs;
  const { quantity, day: fuller } = split.value;
  const rest = { ...next, quantity: next.quantity - quantity };
  return done({ day: fuller, left: left.map((one) => (one === next ? rest : one)) });
}

/** Fills a day with as many parts of an order as it holds, and whole orders beside them. */
function splitFirst(
  setting: DaySetting,
  empty: EmptyDay,
  first: Piece,
  pieces: readonly Piece[],
): Outcome<FilledDay> {
  const split = mostOf(setting, empty, [], first);
  if (!split.ok) return split;
  if (split.value === undefined) {
    const one = tryDay(setting, [{ ...first, quantity: 1 }], empty.book, empty.date);
    return one.ok ? failed(dayTooShort(first, one.value, empty)) : one;
  }
  const { quantity } = split.value;
  const others = pieces.filter((one) => one !== first);
  const more = addUnits(setting, empty, [{ ...first, quantity }], singly(others));
  if (!more.ok) return more;
  return done({
    day: more.value.day ?? split.value.day,
    left: [
      { ...first, quantity: first.quantity - quantity },
      ...others.filter((one) => !more.value.taken.includes(one)),
    ],
  });
}

/** The most good parts of an order that a day holds beside what is on already; undefined where it holds none. */
function mostOf(
  setting: DaySetting,
  empty: EmptyDay,
  already: readonly Piece[],
  piece: Piece,
): Outcome<{ readonly quantity: number; readonly day: TriedDay } | undefined> {
  let most: { readonly quantity: number; readonly day: TriedDay } | undefined;
  let tooMany = piece.quantity;
  while (tooMany - (most?.quantity ?? 0) > 1) {
    const known = most?.quantity ?? 0;
    // Twice as many each time until a day is full, since the order may be far larger than a day.
    const quantity = Math.min(Math.max(1, 2 * known), Math.floor((tooMany + known) / 2));
    const tried = tryDay(setting, [...already, { ...piece, quantity }], empty.book, empty.date);
    if (!tried.ok) return tried;
    if (fits(tried.value, empty)) most = { quantity, day: tried.value };
    else tooMany = quantity;
  }
  return done(most);
}

const hours = (minutes: number): string => (minutes / 60).toFixed(1);

const dayTooShort = ({ order }: Piece, { minutes }: TriedDay, { dayMinutes }: EmptyDay): Fault =>
  error(
    "day-too-short",
    [order.file, "orders", order.number - 1],
    `one part of "${order.order.part.name}" takes ${hours(minutes)} h with set-up, heating, drying and cleaning, but a day has ${hours(dayMinutes)} h`,
    `give a day more hours: ${Math.ceil(minutes / 60)} h or more`,
  );
