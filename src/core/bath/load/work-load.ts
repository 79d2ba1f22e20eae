import type { Dye, Handling, TopUpRule } from "../../model/batch.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import type { DipTimer } from "../../uptake/law/dip-time.js";
import { type BathState, dragOut, evaporate, refill, takeUp } from "./bath-state.js";
import { topUpRecords } from "./top-up-rules.js";

/** What stays the same while a bath works. Dye is mL of concentrate or g of powder throughout. */
export interface BathSetting {
  readonly dye: Pick<Dye, "uptakePerDm2" | "dilution">;
  readonly handling: Handling;
  readonly rule: TopUpRule;
  /** Of the dye, at the bath's temperature. */
  readonly timer: DipTimer;
  /** The bath as made up: working volume and its dye. */
  readonly fresh: BathState;
  /** Hot litres that evaporate per second while the bath is worked. */
  readonly evaporationLPerSecond: number;
  /** Cold volume of a hot one: density of water at the bath's temperature over that at the room's. */
  readonly coldPerHot: number;
}

/** What a load asks of the bath. */
export interface LoadWork {
  readonly areaDm2: number;
  readonly depth: number;
  /** The time that gives the depth in a fresh bath at the temperature that the dye was measured at. */
  readonly freshSeconds: number;
}

/** Amounts measured cold; dye in mL or g. */
export interface TopUp {
  readonly dye: number;
  readonly waterMl: number;
}

export interface LoadResult {
  readonly seconds: number;
  readonly cycleSeconds: number;
  readonly takenUp: number;
  readonly draggedOut: number;
  readonly draggedOutL: number;
  readonly evaporatedL: number;
  readonly strengthBefore: number;
  /** Mean of before and after the dip: the strength at which the time was found. */
  readonly strengthDuring: number;
  readonly strengthAfter: number;
  readonly volumeBeforeL: number;
  readonly volumeAfterL: number;
  readonly topUp: TopUp | null;
  /** The mark was reached before all missing dye was in. */
  readonly topUpShort: boolean;
  readonly after: BathState;
}

/** A bath while it is worked, and what its last load did: written in place, since a life is ten thousand loads. */
export interface WorkedBath
  extends Omit<Writable<LoadResult>, "strengthAfter" | "volumeAfterL" | "topUp" | "after"> {
  /** Measured hot. */
  volumeL: number;
  /** mL of concentrate or g of powder, as `topUpDye`, which is measured cold. */
  dye: number;
  toppedUp: boolean;
  topUpDye: number;
  topUpWaterMl: number;
}

type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

/** A bath before its first load. */
export const bathToWork = ({ volumeL, dye }: BathState): WorkedBath => ({
  volumeL,
  dye,
  seconds: 0,
  cycleSeconds: 0,
  takenUp: 0,
  draggedOut: 0,
  draggedOutL: 0,
  evaporatedL: 0,
  strengthBefore: 0,
  strengthDuring: 0,
  volumeBeforeL: 0,
  toppedUp: false,
  topUpDye: 0,
  topUpWaterMl: 0,
  topUpShort: false,
});

/** Dye content per volume relative to the bath as made up. */
export const strengthOf = (state: BathState, fresh: BathState): number =>
  state.volumeL > 0 ? state.dye / state.volumeL / (fresh.dye / fresh.volumeL) : 0;

/** A bath is topped up when it has fallen below this share of its mark or, by its rule, of its strength. */
export const topUpBelow = 0.98;

/** Adds what the bath's rule asks for now, if anything: its dye, and water for the rest up to the working volume. */
function topUp({ dye, rule, fresh, coldPerHot }: BathSetting, bath: WorkedBath): void {
  bath.toppedUp = false;
  bath.topUpDye = 0;
  bath.topUpWaterMl = 0;
  bath.topUpShort = false;
  const { keepsLevel, keepsStrength, dye: dyeAsked } = topUpRecords[rule];
  const low = keepsLevel && bath.volumeL < topUpBelow * fresh.volumeL;
  const weak = keepsStrength && strengthOf(bath, fresh) < topUpBelow;
  if (!low && !weak) return;
  const deficitL = Math.max(0, fresh.volumeL - bath.volumeL);
  const coldMl = 1000 * deficitL * coldPerHot;
  const { takesRoom } = dyeKinds[dye.dilution.kind];
  const wanted = dyeAsked(bath, fresh, deficitL);
  // What takes up room under the mark goes in as far as there is room.
  const added = takesRoom ? Math.min(wanted, coldMl) : wanted;
  bath.topUpShort = added < wanted;
  if (added === 0 && coldMl === 0) return;
  const filled = refill(bath, { toVolumeL: fresh.volumeL, dye: added });
  bath.toppedUp = true;
  bath.topUpDye = added;
  bath.topUpWaterMl = takesRoom ? coldMl - added : coldMl;
  bath.volumeL = filled.volumeL;
  bath.dye = filled.dye;
}

/** Whether a bath holds less liquor than the ratio asks for. It is topped up once it is 2 % low, and loads are sized for the full one. */
export const tooLittleLiquor = (handling: Handling, state: BathState, massG: number): boolean =>
  1000 * state.volumeL < handling.liquorRatioLPerKg * massG * topUpBelow * (1 - 1e-9);

/** Why a load is not worked: the bath holds less dye than its parts take up, or the dip would take longer than the longest. */
export type Hindrance = "too-little-dye" | "longest-dip";

/**
 * One load: dip, drag-out, evaporation, top-up, in this order. The time follows from the mean of the
 * strengths before and after the dip. Where it cannot be worked, nothing is done and the hindrance told.
 */
export function workOn(
  bath: WorkedBath,
  setting: BathSetting,
  load: LoadWork,
  longestSeconds = Number.POSITIVE_INFINITY,
): Hindrance | undefined {
  const { dye, handling, timer, fresh } = setting;
  if (!(bath.volumeL > 0)) return "too-little-dye";
  const takenUp = dye.uptakePerDm2 * load.areaDm2 * load.depth;
  const dipped = takeUp(bath, takenUp);
  if (dipped.dye < 0 || bath.dye === 0) return "too-little-dye";
  const strengthBefore = strengthOf(bath, fresh);
  const strengthDuring = (strengthBefore + strengthOf(dipped, fresh)) / 2;
  const seconds = timer(load.freshSeconds, strengthDuring);
  if (seconds > longestSeconds) return "longest-dip";
  const draggedOutL = Math.min(dipped.volumeL, (handling.dragOutMlPerDm2 * load.areaDm2) / 1000);
  const rinsed = dragOut(dipped, draggedOutL);
  const cycleSeconds =
    handling.loadSeconds + seconds + handling.drainSeconds + handling.rinseSeconds + handling.unloadSeconds;
  const evaporatedL = Math.min(rinsed.volumeL, setting.evaporationLPerSecond * cycleSeconds);
  const worked = evaporate(rinsed, evaporatedL);
  bath.seconds = seconds;
  bath.cycleSeconds = cycleSeconds;
  bath.takenUp = takenUp;
  bath.draggedOut = dipped.dye - rinsed.dye;
  bath.draggedOutL = draggedOutL;
  bath.evaporatedL = evaporatedL;
  bath.strengthBefore = strengthBefore;
  bath.strengthDuring = strengthDuring;
  bath.volumeBeforeL = bath.volumeL;
  bath.volumeL = worked.volumeL;
  bath.dye = worked.dye;
  topUp(setting, bath);
  return undefined;
}

/** One load on a bath that stays as it is: `workOn` with what it did as a value; undefined where it cannot be worked. */
export function workLoad(setting: BathSetting, state: BathState, load: LoadWork): LoadResult | undefined {
  const bath = bathToWork(state);
  if (workOn(bath, setting, load) !== undefined) return undefined;
  const after = { volumeL: bath.volumeL, dye: bath.dye };
  return {
    seconds: bath.seconds,
    cycleSeconds: bath.cycleSeconds,
    takenUp: bath.takenUp,
    draggedOut: bath.draggedOut,
    draggedOutL: bath.draggedOutL,
    evaporatedL: bath.evaporatedL,
    strengthBefore: bath.strengthBefore,
    strengthDuring: bath.strengthDuring,
    strengthAfter: strengthOf(after, setting.fresh),
    volumeBeforeL: state.volumeL,
    volumeAfterL: after.volumeL,
    topUp: bath.toppedUp ? { dye: bath.topUpDye, waterMl: bath.topUpWaterMl } : null,
    topUpShort: bath.topUpShort,
    after,
  };
}
