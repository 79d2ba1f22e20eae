import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import type { Lab } from "../../model/colour.js";

/** A dyed part of a lot: the colour that its dip should have given, and the one that was read. */
export interface LotReading {
  readonly lot: string;
  readonly foreseen: Lab;
  readonly read: Lab;
  /** By which the colour moves with ln of the time. */
  readonly deltaE00PerLogTime: number;
}

/** How far the colour of a lot is from that of the first one, beyond what its dips explain. */
export interface LotShift {
  readonly lot: string;
  readonly loads: number;
  /** On each axis of CIELAB: positive is lighter, redder, yellower. */
  readonly shift: Lab;
  readonly deltaE00: number;
  /** What chance alone stays under in 95 of 100 lots. */
  readonly doubt95: number;
  /** More than chance. */
  readonly named: boolean;
}

/** χ² of three axes that chance exceeds once in twenty times. */
const chiSquare95 = 7.815;
/** Scatter of a reading below which nobody reads, per axis [CIEDE2000]. */
const leastScatter = 0.2;

/** How far the pace of a bath is not known from one lot to another, one standard deviation of ln of the time. */
const paceDrift = 0.03;

const minus = (one: Lab, other: Lab): Lab => one.map((value, i) => value - other[i]!) as unknown as Lab;
const plus = (one: Lab, other: Lab): Lab => one.map((value, i) => value + other[i]!) as unknown as Lab;
const meanOf = (labs: readonly Lab[]): Lab =>
  [0, 1, 2].map((axis) => labs.reduce((sum, lab) => sum + lab[axis]!, 0) / labs.length) as unknown as Lab;

/**
 * Shifts of lots against the first lot: the difference of their mean misses, and how far chance alone would take it:
 * sqrt(χ² s² (1/n + 1/n_first)), s the scatter of single readings within their lots, an axis, and beside it what the pace
 * of the bath may have done meanwhile. Nothing with one lot only.
 * @param readings in the order of time
 * @source nistHandbook section 6.5.4.3 difference of means of several variables
 * @example
 * lotShifts([{ lot: "a", foreseen: [50, 0, 0], read: [50, 0, 0], deltaE00PerLogTime: 10 }, { lot: "b", foreseen: [50, 0, 0], read: [50, 0, 3], deltaE00PerLogTime: 10 }])[0].named // => true
 */
export function lotShifts(readings: readonly LotReading[]): readonly LotShift[] {
  const byLot = new Map<string, LotReading[]>();
  for (const one of readings) byLot.set(one.lot, [...(byLot.get(one.lot) ?? []), one]);
  const [first, ...others] = [...byLot].map(([lot, its]) => ({
    lot,
    its,
    mean: meanOf(its.map(({ read, foreseen }) => minus(read, foreseen))),
    foreseen: meanOf(its.map(({ foreseen }) => foreseen)),
  }));
  if (first === undefined) return [];
  let squares = 0;
  for (const { its, mean } of [first, ...others])
    for (const { read, foreseen } of its) squares += ciede2000(plus(foreseen, mean), read) ** 2;
  const freedom = readings.length - byLot.size;
  const scatter = Math.max(leastScatter, freedom > 0 ? Math.sqrt(squares / freedom / 3) : 0.35);
  return others.map(({ lot, its, mean, foreseen }) => {
    const shift = minus(mean, first.mean);
    const deltaE00 = ciede2000(foreseen, plus(foreseen, shift));
    const slope = its.reduce((sum, one) => sum + one.deltaE00PerLogTime, 0) / its.length;
    const doubt95 = Math.hypot(
      Math.sqrt(chiSquare95 * (1 / its.length + 1 / first.its.length)) * scatter,
      halfWidth95 * paceDrift * slope,
    );
    return { lot, loads: its.length, shift, deltaE00, doubt95, named: deltaE00 > doubt95 };
  });
}
