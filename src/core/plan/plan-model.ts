import type { Holding } from "../bath/heat/heat-report.js";
import type { WarmUpPoint } from "../bath/heat/warm-up.js";
import type { LifeEnd } from "../bath/life/bath-life.js";
import type { DyeFate } from "../bath/life/dye-fate.js";
import type { DrainSaving, Range } from "../bath/rinse/longer-drain.js";
import type { BatchCosts } from "../cost/batch-costs.js";
import type { BathStart, Cover, Dryer, Lab, TopUpRule } from "../model/batch.js";
import type { RestsOn } from "../model/rests-on.js";
import type { KeyedFigure } from "../quantity/dye/dilution.js";
import type { DyeAmount, DyeFigures } from "../quantity/dye/dye-figures.js";
import type { Caution } from "./advice/cautions.js";
import type { Advice } from "./advice/part-advice.js";
import type { LoadLimit } from "./assign/load-size.js";
import type { TimelineEntry } from "./day/timeline.js";

export type PlanMakeUp = DyeAmount &
  KeyedFigure & {
    readonly volumeHotL: number;
    readonly volumeColdL: number;
    readonly waterMl: number;
  };

export interface PlanHeating {
  /** Null where the tank has no known heater. */
  readonly minutes: number | null;
  readonly kWh: number | null;
  readonly holdingW: number;
  readonly evaporationKgPerH: number;
  /** Times and temperatures on the way up, lid on; empty without a heater. */
  readonly warmUp?: readonly WarmUpPoint[];
  /** While parts are dipped, a lid off. */
  readonly lidOff?: Holding;
  /** Between loads, a lid on; the same where there is no lid. */
  readonly lidOn?: Holding;
  /** Under each other cover: minutes to heat up (null: not hot enough, or no heater), and holding. */
  readonly otherCovers?: readonly OtherCover[];
}

export interface OtherCover {
  readonly cover: Cover;
  readonly minutes: number | null;
  readonly kWh: number | null;
  readonly lidOff: Holding;
  readonly lidOn: Holding;
}

export interface PlanLoad {
  readonly load: number;
  readonly order: number;
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  readonly parts: number;
  /** A second dip of parts that missed their shade. */
  readonly again?: true;
  readonly boundBy: LoadLimit;
  readonly areaDm2: number;
  readonly depth: number;
  /** False where the dye does not reach the shade: the dip gives its nearest colour. */
  readonly reachable: boolean;
  readonly dipSeconds: number;
  readonly cycleSeconds: number;
  /** Times within tolerance, without a far end (null) in a bath too weak to leave it; null where no colour is known. */
  readonly windowSeconds: readonly [number, number | null] | null;
  readonly deltaE00: number | null;
  readonly slopePerSecond: number | null;
  readonly lab: Lab | null;
  readonly strengthBefore: number;
  readonly strengthAfter: number;
  readonly volumeBeforeL: number;
  readonly volumeAfterL: number;
  readonly evaporatedL: number;
  readonly topUp: (DyeAmount & { readonly waterMl: number }) | null;
  readonly restsOnAssumed: RestsOn;
}

export type PlanDyeBalance = { readonly restsOnAssumed: RestsOn } & DyeFigures<
  "start" | "added" | "takenUp" | "draggedOut" | "left"
>;

export type PlanLife = {
  readonly rule: TopUpRule;
  readonly loads: number;
  readonly parts: number;
  readonly areaDm2: number;
  readonly endedBy: LifeEnd;
  /** Null where it is not known how often the batch is repeated. */
  readonly days: number | null;
  /** Dye, water and disposal over the life, per part; null without prices. */
  readonly bathCostPerPart: number | null;
  /** Labour of the dips themselves, which a weaker bath makes longer, per part; null without a rate. */
  readonly dipLabourPerPart: number | null;
  /** Both together over the life, and per part: what rules are compared by. */
  readonly cost: number | null;
  readonly costPerPart: number | null;
  readonly dipSeconds: number;
  readonly dyeFate: DyeFate;
  readonly restsOnAssumed: RestsOn;
  // Null where the bath does not outlast a load.
} & DyeFigures<"perPart" | "perDm2", number | null>;

/** Liquor that holds the bath steady for this work, poured up to the mark after each load. */
export type PlanSteadyTopUp = {
  /** Relative to the fresh bath: 1.4 is liquor of 140 % strength. */
  readonly strength: number;
  /** Null where it would have to be stronger than the concentrate itself. */
  readonly dilution: string | null;
  /** One a load of the batch; measured cold. */
  readonly pours: readonly (DyeAmount & { readonly liquorMl: number; readonly waterMl: number })[];
  readonly restsOnAssumed: RestsOn;
} & ({ readonly fraction: number | null } | { readonly gramsPerL: number });

/** What draining longer would leave in the bath, over the life under the bath's own rule: an estimate. */
export interface PlanLongerDrain extends DrainSaving {
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

/** A load whose part is worth reading: what is typed then corrects the times of the loads after it. */
export interface TrialAdvice {
  readonly load: number;
  readonly seconds: number;
}

export interface PlanBath {
  /** Position in the batch file's list, as in the timeline. */
  readonly bath: number;
  readonly tank: string;
  readonly dye: string;
  readonly celsius: number;
  readonly dilution: string;
  readonly start: BathStart;
  readonly topUpRule: TopUpRule;
  readonly after: "keep" | "dump";
  readonly depthReferenceSeconds: number;
  readonly makeUp: PlanMakeUp;
  readonly heating: PlanHeating;
  readonly loads: readonly PlanLoad[];
  readonly dyeBalance: PlanDyeBalance;
  readonly life: PlanLife;
  readonly lives: readonly PlanLife[];
  readonly cheapestRule: TopUpRule | null;
  /** Where the dye of this batch went; null, as the next two, where only costs were asked for. */
  readonly dyeFate: (DyeFate & { readonly restsOnAssumed: RestsOn }) | null;
  /** Also null where nothing leaves the bath, or a load cannot be dyed at full strength. */
  readonly steadyTopUp: PlanSteadyTopUp | null;
  /** Also null where parts drain as long as it helps. */
  readonly longerDrain: PlanLongerDrain | null;
  /** Which load to read, where a trial dip would correct times that may leave their windows. */
  readonly trialAdvice: TrialAdvice | null;
  readonly notes: string | null;
}

/** The whole run sheet: what every writer of `plan` and `cost` reads. Numbers are unrounded. */
export interface Plan extends BatchCosts {
  readonly startAtMinute: number | null;
  readonly baths: readonly PlanBath[];
  /** What is done with every load after its dip. */
  readonly rinsing: {
    readonly drainSeconds: number;
    readonly rinseSeconds: number;
    readonly rinseWaterL: number;
  };
  /** The dryer that is used, or null. */
  readonly dryer: Pick<Dryer, "name" | "capacity" | "celsius" | "minutes"> | null;
  readonly timeline: readonly TimelineEntry[];
  readonly advice: readonly Advice[];
  readonly cautions: readonly Caution[];
}
