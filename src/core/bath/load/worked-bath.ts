import type { HeatState } from "../heat/working/heat-state.js";
import type { BathState } from "./bath-state.js";
import type { MixedDip } from "./mixed-dip.js";

/** Amounts measured cold; dye in mL or g. */
export interface TopUp {
  readonly dye: number;
  /** Of a mix each; `dye` is their sum. */
  readonly dyeEach?: readonly number[];
  readonly waterMl: number;
}

/**
 * A bath while it is worked, with its temperature, and what its last load did; seconds and evaporated liquor count from
 * the start of that load. Written in place, since a life is ten thousand loads.
 */
export interface WorkedBath extends HeatState {
  /** mL of concentrate or g of powder, as `topUpDye`, which is measured cold. */
  dye: number;
  /** Of the dip, as timed. */
  dipSeconds: number;
  /** What the dip would take at the bath's own temperature. */
  setSeconds: number;
  waitSeconds: number;
  /** From racking to the last part off, without the wait; with `tendingSeconds`. */
  cycleSeconds: number;
  /** Of it, changing the rinse water before the load and topping up after it. */
  tendingSeconds: number;
  /** Loads since the bath was set up, which the rinse water has served. */
  loadsRinsed: number;
  celsiusBefore: number;
  celsiusAfter: number;
  takenUp: number;
  draggedOut: number;
  draggedOutL: number;
  strengthBefore: number;
  /** Mean of before and after the dip: the strength at which the time was found. */
  strengthDuring: number;
  volumeBeforeL: number;
  toppedUp: boolean;
  topUpDye: number;
  topUpWaterMl: number;
  /** The mark was reached before all missing dye was in. */
  topUpShort: boolean;
  /** Of a mix each dye, in the order of its recipe; undefined for a single dye. */
  dyeEach: readonly number[] | undefined;
  takenUpEach: readonly number[];
  draggedOutEach: readonly number[];
  topUpDyeEach: readonly number[];
  mixedDip: MixedDip | undefined;
}

/** What was poured into a bath, if anything. */
export const topUpOf = ({
  toppedUp,
  topUpDye,
  topUpWaterMl,
  dyeEach,
  topUpDyeEach,
}: WorkedBath): TopUp | null =>
  toppedUp ? { dye: topUpDye, waterMl: topUpWaterMl, ...(dyeEach && { dyeEach: topUpDyeEach }) } : null;

const none: readonly number[] = [];

/**
 * A bath before its first load, at a temperature [°C]. Written out: a spread of `heatState` took 3 % of the time of
 * `cost` over 1,000 batches.
 */
export const bathToWork = ({ volumeL, dye, dyeEach }: BathState, celsius: number): WorkedBath => ({
  celsius,
  volumeL,
  partsJPerK: 0,
  seconds: 0,
  heaterKwh: 0,
  agitationKwh: 0,
  lostKwh: 0,
  bathKwh: 0,
  partsKwh: 0,
  topUpKwh: 0,
  evaporatedL: 0,
  dye,
  dipSeconds: 0,
  setSeconds: 0,
  waitSeconds: 0,
  cycleSeconds: 0,
  tendingSeconds: 0,
  loadsRinsed: 0,
  celsiusBefore: celsius,
  celsiusAfter: celsius,
  takenUp: 0,
  draggedOut: 0,
  draggedOutL: 0,
  strengthBefore: 0,
  strengthDuring: 0,
  volumeBeforeL: 0,
  toppedUp: false,
  topUpDye: 0,
  topUpWaterMl: 0,
  topUpShort: false,
  dyeEach,
  takenUpEach: none,
  draggedOutEach: none,
  topUpDyeEach: none,
  mixedDip: undefined,
});
