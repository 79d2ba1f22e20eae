import type { LifeEnd } from "../bath/life.js";
import type { CostSheet } from "../cost/allocate.js";
import type { ColourCosts } from "../cost/colours.js";
import type { OtherBase } from "../cost/other-bases.js";
import type { PlanPrices } from "../cost/prices.js";
import type { Fault } from "../fault.js";
import type { Advice } from "./advice.js";
import type { Caution } from "./cautions.js";
import type { LoadLimit } from "./loads.js";
import type { BathStart, Lab, TopUpRule } from "./model.js";
import type { TimelineEntry } from "./timeline.js";

/** An amount of dye under the name that says its unit: mL of concentrate or g of powder, measured cold. */
export type DyeAmount = { readonly concentrateMl: number } | { readonly powderG: number };

export type PlanMakeUp = DyeAmount & {
  /** Volume share of concentrate; a powder dye has `gramsPerL` instead. */
  readonly fraction?: number;
  readonly gramsPerL?: number;
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
}

export interface PlanLoad {
  readonly load: number;
  readonly order: number;
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  readonly parts: number;
  readonly boundBy: LoadLimit;
  readonly areaDm2: number;
  readonly depth: number;
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
}

export type PlanDyeBalance =
  | {
      readonly startMl: number;
      readonly addedMl: number;
      readonly takenUpMl: number;
      readonly draggedOutMl: number;
      readonly leftMl: number;
    }
  | {
      readonly startG: number;
      readonly addedG: number;
      readonly takenUpG: number;
      readonly draggedOutG: number;
      readonly leftG: number;
    };

export type PlanLife = {
  readonly rule: TopUpRule;
  readonly loads: number;
  readonly parts: number;
  readonly areaDm2: number;
  readonly endedBy: LifeEnd;
  /** Dye, water and disposal over the life, per part; null without prices. */
  readonly bathCostPerPart: number | null;
} & ( // Null where the bath does not outlast a load.
  | { readonly concentrateMlPerPart: number | null; readonly concentrateMlPerDm2: number | null }
  | { readonly powderGPerPart: number | null; readonly powderGPerDm2: number | null }
);

export interface PlanBath {
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
  readonly notes: string | null;
}

export interface PlanOrder {
  readonly order: number;
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  readonly quantity: number;
  readonly started: number;
  readonly costPerPart: number | null;
  readonly total: number | null;
  readonly lines: CostSheet | null;
  /** The part on each other base that it has a price for. */
  readonly otherBases: readonly OtherBase[];
  readonly netPrice?: number;
  readonly price?: number;
}

/** A figure that was not given and was taken from a published or usual range. */
export interface Assumption {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
}

/** The whole run sheet: what every writer of `plan` and `cost` reads. Numbers are unrounded. */
export interface Plan {
  readonly batch: string;
  readonly date: string | null;
  readonly currency: string | null;
  readonly startAtMinute: number | null;
  readonly baths: readonly PlanBath[];
  readonly timeline: readonly TimelineEntry[];
  readonly orders: readonly PlanOrder[];
  readonly totals: {
    readonly cost: number | null;
    readonly lines: CostSheet | null;
    readonly good: number;
    readonly started: number;
    readonly loads: number;
    readonly minutes: number;
    readonly operatorMinutes: number;
    readonly dryerRuns: number;
    readonly kWh: number;
  };
  /** What each dye costs whatever is dyed, and the quantity that pays for it. */
  readonly colours: readonly ColourCosts[];
  readonly prices: PlanPrices;
  /** What costs leave out since its price was not given. */
  readonly notCounted: readonly string[];
  /** Limits of the batch that are exceeded: exit status 1. */
  readonly exceeded: readonly Fault[];
  readonly assumptions: readonly Assumption[];
  readonly advice: readonly Advice[];
  readonly cautions: readonly Caution[];
  readonly warnings: readonly Fault[];
}
