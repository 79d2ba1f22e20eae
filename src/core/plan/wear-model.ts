import type { Holding } from "../bath/heat/heat-report.js";
import type { WarmUpPoint } from "../bath/heat/warm-up.js";
import type { DyeFate } from "../bath/life/dye-fate.js";
import type { LifePoint } from "../bath/life/trace.js";
import type { DrainSaving, Range } from "../bath/rinse/longer-drain.js";
import type { BatchCosts } from "../cost/batch-costs.js";
import type { Cover, TopUpRule } from "../model/batch.js";
import type { RestsOn } from "../model/rests-on.js";
import type { DyeAmount } from "../quantity/dye/dye-figures.js";
import type { PlanBath, PlanLife } from "./plan-model.js";

/** How a tank warms up from the room's temperature, filled to its mark, and what holds it, under a cover. */
export interface CoverHeat {
  readonly cover: Cover;
  /** Null where it does not get hot enough, or no heater is known. */
  readonly minutes: number | null;
  readonly kWh: number | null;
  /** While parts are dipped, a lid off. */
  readonly lidOff: Holding;
  /** Between loads, a lid on; the same where there is no lid. */
  readonly lidOn: Holding;
}

/** The same for a tank as it is, and what other covers would change. */
export interface WearHeat extends CoverHeat {
  /** Times and temperatures on the way up, lid on; empty without a heater. */
  readonly warmUp: readonly WarmUpPoint[];
  readonly otherCovers: readonly CoverHeat[];
}

/** Liquor that holds the bath steady for this work, poured up to the mark after each load. */
export type SteadyTopUpFigures = {
  /** Relative to the fresh bath: 1.4 is liquor of 140 % strength. */
  readonly strength: number;
  /** Null where it would have to be stronger than the concentrate itself. */
  readonly dilution: string | null;
  /** Mean of the pours. */
  readonly mlPerLoad: number;
  /** One a load of the batch; measured cold. */
  readonly pours: readonly (DyeAmount & { readonly liquorMl: number; readonly waterMl: number })[];
  readonly restsOnAssumed: RestsOn;
} & ({ readonly fraction: number | null } | { readonly gramsPerL: number });

/** What draining longer would leave in the bath, over the life under the bath's own rule: an estimate. */
export interface LongerDrain extends DrainSaving {
  readonly estimate: true;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** mL of concentrate or g of powder a load, and the time it takes. */
  readonly dyePerLoad: Range;
  readonly minutesPerLoad: number;
  /** Money a load that the dye is worth, and that the time costs; null without a price or rate. */
  readonly savedPerLoad: Range | null;
  readonly labourPerLoad: number | null;
  readonly restsOnAssumed: RestsOn;
}

/** Parts of one order that a bath dyes each time the batch is repeated. */
export interface WearPortion {
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  readonly parts: number;
  /** In a fresh bath that stays at its temperature. */
  readonly freshDipSeconds: number;
}

/** How one bath wears: what `bath` reports. */
export interface BathWear
  extends Pick<
    PlanBath,
    "bath" | "tank" | "dye" | "celsius" | "topUpRule" | "after" | "heating" | "energyBalance" | "dyeBalance"
  > {
  readonly volumeL: number;
  /** In the order of work. */
  readonly portions: readonly WearPortion[];
  /** Under each rule. */
  readonly lives: readonly PlanLife[];
  /** Cheapest per part over the whole range of what is assumed; null where no rule is. */
  readonly cheapestRule: TopUpRule | null;
  /** The life under the bath's own rule: all of its loads, or some, spread evenly; `portion` counts `portions` from 1. */
  readonly trace: readonly LifePoint[];
  /** Where the dye of this batch went. */
  readonly dyeFate: DyeFate & { readonly restsOnAssumed: RestsOn };
  /** Null where nothing leaves the bath, or a load cannot be dyed at full strength. */
  readonly steadyTopUp: SteadyTopUpFigures | null;
  /** Null where parts drain as long as it helps, and where a dip is so short that its drain is a good part of it. */
  readonly longerDrain: LongerDrain | null;
  readonly heat: WearHeat;
  /** What figures rest on that have no such list of their own. */
  readonly restsOnAssumed: RestsOn;
}

/** How the baths of a batch wear. Numbers are unrounded. */
export interface BatchWear
  extends Pick<BatchCosts, "batch" | "date" | "currency" | "assumptions" | "warnings"> {
  readonly baths: readonly BathWear[];
}
