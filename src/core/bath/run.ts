import type { Dye, Handling, TopUpRule } from "../batch/model.js";
import { type DipTimer, deepestDepth, type UptakeModel } from "../uptake/depth.js";
import { type BathState, dragOut, evaporate, refill, takeUp } from "./step.js";

/** What stays the same while a bath works. Dye is mL of concentrate or g of powder throughout. */
export interface BathSetting {
  readonly dye: Pick<Dye, "uptakePerDm2" | "dilution">;
  readonly handling: Handling;
  readonly rule: TopUpRule;
  readonly model: UptakeModel;
  /** Of the model, at the bath's temperature. */
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
  /** The least depth within the shade's tolerance: what a dye that levels off short of `depth` may stop at. */
  readonly leastDepth?: number | undefined;
}

/** Amounts measured cold; dye in mL or g. */
export interface TopUp {
  readonly dye: number;
  readonly waterMl: number;
}

export interface LoadResult {
  readonly seconds: number;
  /** The depth itself is out of reach; the dip ends between it and the least depth. */
  readonly levelledOff: boolean;
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

/** Dye content per volume relative to the bath as made up. */
export const strengthOf = (state: BathState, fresh: BathState): number =>
  state.volumeL > 0 ? state.dye / state.volumeL / (fresh.dye / fresh.volumeL) : 0;

/** A bath is topped up when it has fallen below this share of its mark or, by its rule, of its strength. */
export const topUpBelow = 0.98;

/**
 * What the bath's rule adds now, or null where it adds nothing. Both rules refill to the working volume:
 * level with liquor at the make-up ratio, strength with the missing dye and water for the rest.
 */
export function topUpNow(
  setting: BathSetting,
  state: BathState,
): { readonly topUp: TopUp | null; readonly short: boolean; readonly after: BathState } | null {
  const { dye, rule, fresh, coldPerHot } = setting;
  const low = state.volumeL < topUpBelow * fresh.volumeL;
  const weak = strengthOf(state, fresh) < topUpBelow;
  if (rule === "none" || !(low || (rule === "strength" && weak))) return null;
  const deficitL = Math.max(0, fresh.volumeL - state.volumeL);
  const coldMl = 1000 * deficitL * coldPerHot;
  const liquid = dye.dilution.kind === "liquid";
  const wanted =
    rule === "level" ? (deficitL / fresh.volumeL) * fresh.dye : Math.max(0, fresh.dye - state.dye);
  // Concentrate takes up room under the mark: what does not fit is left out. Powder does not.
  const added = liquid ? Math.min(wanted, coldMl) : wanted;
  if (added === 0 && coldMl === 0) return wanted > 0 ? { topUp: null, short: true, after: state } : null;
  return {
    topUp: { dye: added, waterMl: liquid ? coldMl - added : coldMl },
    short: added < wanted,
    after: refill(state, { toVolumeL: fresh.volumeL, dye: added }),
  };
}

/** Whether a bath holds less liquor than the ratio asks for. It is topped up once it is 2 % low, and loads are sized for the full one. */
export const tooLittleLiquor = (handling: Handling, state: BathState, massG: number): boolean =>
  1000 * state.volumeL < handling.liquorRatioLPerKg * massG * topUpBelow * (1 - 1e-9);

/** Time to halfway between the least depth and the deepest that the bath gives; undefined where it gives less than the least. */
function shortOf(
  { model, timer }: BathSetting,
  { leastDepth }: LoadWork,
  strength: number,
): number | undefined {
  if (leastDepth === undefined) return undefined;
  const deepest = deepestDepth(model, strength);
  return leastDepth < deepest ? timer((leastDepth + deepest) / 2, strength) : undefined;
}

/**
 * One load: dip, drag-out, evaporation, top-up, in this order. The time follows from the mean of the
 * strengths before and after the dip. Undefined where the bath is too weak for the depth, and for the least
 * depth that will do, at any time, or dry.
 */
export function workLoad(setting: BathSetting, state: BathState, load: LoadWork): LoadResult | undefined {
  const { dye, handling, timer } = setting;
  if (!(state.volumeL > 0)) return undefined;
  const takenUp = dye.uptakePerDm2 * load.areaDm2 * load.depth;
  const dipped = takeUp(state, takenUp);
  if (dipped.dye < 0) return undefined;
  const strengthBefore = strengthOf(state, setting.fresh);
  const strengthDuring = (strengthBefore + strengthOf(dipped, setting.fresh)) / 2;
  const exact = timer(load.depth, strengthDuring);
  const seconds = exact ?? shortOf(setting, load, strengthDuring);
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
    levelledOff: exact === undefined,
    cycleSeconds,
    takenUp,
    draggedOut: dipped.dye - rinsed.dye,
    draggedOutL,
    evaporatedL,
    strengthBefore,
    strengthDuring,
    strengthAfter: strengthOf(after, setting.fresh),
    volumeBeforeL: state.volumeL,
    volumeAfterL: after.volumeL,
    topUp: filled?.topUp ?? null,
    topUpShort: filled?.short ?? false,
    after,
  };
}
