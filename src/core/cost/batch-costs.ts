import type { Fault } from "../fault.js";
import type { Assumption } from "../model/assumption.js";
import type { RestsOn } from "../model/rests-on.js";
import type { AssumedShare } from "./assumed-shares.js";
import type { CostSheet } from "./line/cost-sheet.js";
import type { ColourCosts } from "./price/colour-costs.js";
import type { OtherBase } from "./price/other-bases.js";
import type { PlanPrices } from "./rate/plan-prices.js";

/** One order with what it costs and its price. */
export interface CostedOrder {
  readonly order: number;
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  /** False where the dye does not reach the shade: then no price is given. */
  readonly reachable: boolean;
  readonly quantity: number;
  readonly started: number;
  readonly costPerPart: number | null;
  readonly total: number | null;
  readonly lines: CostSheet | null;
  /** The part on each other base that it has a price for. */
  readonly otherBases: readonly OtherBase[];
  readonly netPrice?: number;
  readonly price?: number;
  /** In the price, as a share of the net price. */
  readonly tax?: number;
  readonly restsOnAssumed: RestsOn;
}

/** What a batch costs: the part of a plan that cost reports read. Numbers are unrounded. */
export interface BatchCosts {
  readonly batch: string;
  readonly date: string | null;
  readonly currency: string | null;
  readonly orders: readonly CostedOrder[];
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
    readonly restsOnAssumed: RestsOn;
    /** How much of the cost rests on each assumption. */
    readonly assumedShares: readonly AssumedShare[];
  };
  /**
   * Figures outside baths, orders and totals without a mark of their own (the clock, what a colour pays)
   * rest on these assumed figures; objects with a `restsOnAssumed` of their own on theirs.
   */
  readonly restsOnAssumed: RestsOn;
  /** What each dye costs whatever is dyed, and the quantity that pays for it. */
  readonly colours: readonly ColourCosts[];
  readonly prices: PlanPrices;
  /** What costs leave out since its price was not given. */
  readonly notCounted: readonly string[];
  /** Limits of the batch that are exceeded: exit status 1. */
  readonly exceeded: readonly Fault[];
  readonly assumptions: readonly Assumption[];
  readonly warnings: readonly Fault[];
}
