import type { Dye, Handling, Tank, TopUpRule } from "../batch/model.js";
import { secondsForDepth, type UptakeModel } from "../uptake/depth.js";
import { type BathState, dragOut, evaporate, refill, takeUp } from "./step.js";

/** What stays the same while a bath works. Dye is mL of concentrate or g of powder throughout. */
export interface BathSetting {
  readonly tank: Pick<Tank, "volumeL">;
  readonly dye: Pick<Dye, "celsius" | "uptakePerDm2" | "dilution">;
  readonly handling: Handling;
  readonly rule: TopUpRule;
  readonly model: UptakeModel;
  /** Dye per litre of hot liquor in a fresh bath. */
  readonly freshDyePerL: number;
  /** Hot litres that evaporate per second while the bath is worked. */
  readonly evaporationLPerSecond: number;
  /** Cold volume of a hot one: density of water at the bath's temperature over that at the room's. */
  readonly coldPerHot: number;
}

/** What a load asks of the bath. */
export interface LoadWork {
  readonly areaDm2: number;
  readonly depth: number;
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

/** Dye content per volume relative to a fresh bath. */
export const strengthOf = (setting: Pick<BathSetting, "freshDyePerL">, state: BathState): number =>
  state.volumeL > 0 ? state.dye / state.volumeL / setting.freshDyePerL : 0;

/** The bath is refilled when it has fallen more than this share below its mark. */
export const refillBelow = 0.98;

/** What the bath's rule adds now, or null where it adds nothing. */
export function topUpNow(
  setting: BathSetting,
  state: BathState,
): { topUp: TopUp; short: boolean; after: BathState } | null {
  const { tank, dye, rule, freshDyePerL, coldPerHot } = setting;
  const low = state.volumeL < refillBelow * tank.volumeL;
  const weak = strengthOf(setting, state) < 0.98;
  if (rule === "none" || !(low || (rule === "strength" && weak))) return null;
  const deficitL = Math.max(0, tank.volumeL - state.volumeL);
  const coldMl = 1000 * deficitL * coldPerHot;
  const wanted =
    rule === "level" ? deficitL * freshDyePerL : Math.max(0, tank.volumeL * freshDyePerL - state.dye);
  // A liquid concentrate takes up room: what does not fit under the mark is left out.
  const added = dye.dilution.kind === "liquid" ? Math.min(wanted, coldMl) : wanted;
  if (added === 0 && deficitL === 0) return null;
  const waterMl = dye.dilution.kind === "liquid" ? coldMl - added : coldMl;
  const after = refill(state, { toVolumeL: Math.max(tank.volumeL, state.volumeL), dye: added });
  return { topUp: { dye: added, waterMl }, short: added < wanted, after };
}

/**
 * One load: dip, drag-out, evaporation, top-up, in this order. The time follows from the mean of the
 * strengths before and after the dip. Undefined where the bath is too weak for the depth at any time.
 */
export function workLoad(setting: BathSetting, state: BathState, load: LoadWork): LoadResult | undefined {
  const { dye, handling, model } = setting;
  const takenUp = dye.uptakePerDm2 * load.areaDm2 * load.depth;
  const dipped = takeUp(state, takenUp);
  if (dipped.dye < 0) return undefined;
  const strengthBefore = strengthOf(setting, state);
  const strengthDuring = (strengthBefore + strengthOf(setting, dipped)) / 2;
  const seconds = secondsForDepth(model, {
    depth: load.depth,
    strength: strengthDuring,
    celsius: dye.celsius,
  });
  if (seconds === undefined) return undefined;
  const draggedOutL = Math.min(dipped.volumeL, (handling.dragOutMlPerDm2 * load.areaDm2) / 1000);
  const rinsed = dragOut(dipped, draggedOutL);
  const cycleSeconds =
    handling.loadSeconds + seconds + handling.drainSeconds + handling.rinseSeconds + handling.unloadSeconds;
  const evaporatedL = Math.min(rinsed.volumeL, setting.evaporationLPerSecond * cycleSeconds);
  const worked = evaporate(rinsed, evaporatedL);
  const filled = topUpNow(setting, worked);
  const after = filled?.after ?? worked;
  return {
    seconds,
    cycleSeconds,
    takenUp,
    draggedOut: dipped.dye - rinsed.dye,
    draggedOutL,
    evaporatedL,
    strengthBefore,
    strengthDuring,
    strengthAfter: strengthOf(setting, after),
    volumeBeforeL: state.volumeL,
    volumeAfterL: after.volumeL,
    topUp: filled?.topUp ?? null,
    topUpShort: filled?.short ?? false,
    after,
  };
}
