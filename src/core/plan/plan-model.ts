import type { LifeEnd } from "../bath/life/bath-life.js";
import type { DyeFate } from "../bath/life/dye-fate.js";
import type { LoadLimit } from "../bath/load/load-size.js";
import type { BatchCosts } from "../cost/batch-costs.js";
import type { BathStart, Cover, Dryer, Lab, TopUpRule } from "../model/batch.js";
import type { RestsOn } from "../model/rests-on.js";
import type { KeyedFigure } from "../quantity/dye/dilution.js";
import type { DyeAmount, DyeFigure, DyeFigures } from "../quantity/dye/dye-figures.js";
import type { Caution } from "./advice/cautions.js";
import type { Advice } from "./advice/part-advice.js";
import type { TimelineEntry } from "./day/timeline.js";

/** The same figures for each dye of a mix; absent for a single dye. */
export interface MixFigures<Name extends DyeFigure> {
  readonly mix?: readonly (DyeFigures<Name> & { readonly dye: string })[];
}

export type PlanMakeUp = DyeAmount &
  MixFigures<"amount"> &
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
  /** While it heats up; the bath is then filled with water to where it was. */
  readonly evaporatedL: number;
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
  /** As timed, in the bath as it cools and warms. */
  readonly dipSeconds: number;
  /** Lid on, until the bath is warm enough for the load. */
  readonly waitSeconds: number;
  readonly cycleSeconds: number;
  /** Just before the parts go in: what a thermometer shows. */
  readonly celsiusBefore: number;
  /** At the end of the dip. */
  readonly celsiusAfter: number;
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
  readonly topUp: (DyeAmount & MixFigures<"amount"> & { readonly waterMl: number }) | null;
  /** Of each dye of a mix, relative to the bath as made up, and what its parts took up; absent for a single dye. */
  readonly mix?: readonly (DyeFigures<"takenUp"> & {
    readonly dye: string;
    readonly depth: number;
    readonly strengthBefore: number;
    readonly strengthAfter: number;
  })[];
  readonly restsOnAssumed: RestsOn;
}

type Balanced = "start" | "added" | "takenUp" | "draggedOut" | "left";
export type PlanDyeBalance = { readonly restsOnAssumed: RestsOn } & MixFigures<Balanced> &
  DyeFigures<Balanced>;

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

/** A top-up before the bath is heated; amounts measured cold. */
export type PlanStartTopUp = DyeAmount &
  MixFigures<"amount"> & { readonly waterMl: number; readonly celsius: number };

/** Where the heat of a bath came from and went, from the room's temperature to the end of its last cycle. */
export interface PlanEnergyBalance {
  /** From the mains, heating up included. */
  readonly heaterKwh: number;
  readonly agitationKwh: number;
  readonly lostKwh: number;
  readonly partsKwh: number;
  readonly topUpKwh: number;
  readonly bathKwh: number;
}

/** The rinses of a bath's loads. */
export type PlanRinse = {
  readonly rinses: number;
  /** Loads for which one filling serves. */
  readonly every: number;
  readonly litres: number;
  /** Of the dye on and in the parts of the worst load, what is loose after its rinses. */
  readonly looseShare: number;
  /** Rinses that bring it under 1 %; null where a dozen do not. */
  readonly rinsesEnough: number | null;
  readonly restsOnAssumed: RestsOn;
} & DyeFigures<"rinsed">;

/** What is left when the bath has cooled, for the jug and the next batch file. */
export interface PlanCarryOver {
  readonly coldVolumeL: number;
  readonly volumeL: number;
  readonly strength: number;
  /** Of each dye of a mix; absent for a single dye. */
  readonly mix?: readonly { readonly dye: string; readonly strength: number }[];
  readonly ageDays: number;
  readonly areaDm2: number;
  /** Of the dye's shelf life, below 0 past it; null where it is not known. */
  readonly keepsDays: number | null;
  /** ISO 8601, where date and shelf life are known. */
  readonly useBy: string | null;
  /** How often the batch is repeated, which `start` counts with; null where that is not known. */
  readonly daysToNext: number | null;
  /** The value of `start:` in the next batch file. */
  readonly start: string;
}

/** A load whose part is worth reading: what is typed then corrects the times of the loads after it. */
export interface TrialAdvice {
  readonly load: number;
  /** What its dip counts for at the bath's own temperature: the parts cool the bath, and a trial is as at that. */
  readonly seconds: number;
}

/** How a bath starts; of a mix the strengths of its dyes are named. */
export type PlanStart =
  | Extract<BathStart, { readonly kind: "fresh" }>
  | (Omit<Extract<BathStart, { readonly kind: "kept" }>, "strengthEach"> & {
      readonly mix?: readonly { readonly dye: string; readonly strength: number }[];
    });

export interface PlanBath {
  /** Position in the batch file's list, as in the timeline. */
  readonly bath: number;
  readonly tank: string;
  readonly cover: Cover;
  readonly dye: string;
  readonly celsius: number;
  /** On all times of the dye, from the bath log; 1 without one. */
  readonly timeFactor: number;
  readonly dilution: string;
  readonly start: PlanStart;
  readonly topUpRule: TopUpRule;
  readonly after: "keep" | "dump";
  readonly depthReferenceSeconds: number;
  readonly makeUp: PlanMakeUp;
  /** Of a kept bath that is filled before it is heated. */
  readonly startTopUp: PlanStartTopUp | null;
  readonly heating: PlanHeating;
  readonly loads: readonly PlanLoad[];
  readonly rinse: PlanRinse;
  /** From the last cycle until it may be emptied; null where the room is too warm for it. */
  readonly coolMinutes: number | null;
  /** Liquor that is then left [L, as measured at the bath's own temperature]. */
  readonly leftL: number;
  /** Null where the bath is dumped. */
  readonly carryOver: PlanCarryOver | null;
  readonly dyeBalance: PlanDyeBalance;
  readonly energyBalance: PlanEnergyBalance;
  readonly life: PlanLife;
  /** Which load to read, where a trial dip would correct times that may leave their windows. */
  readonly trialAdvice: TrialAdvice | null;
  readonly notes: string | null;
}

/** The whole run sheet: what every writer of `plan` and `cost` reads. Numbers are unrounded. */
export interface Plan extends BatchCosts {
  readonly startAtMinute: number | null;
  /** The bath log, where there is one. */
  readonly log?: string;
  readonly baths: readonly PlanBath[];
  /** What is done with every load after its dip. */
  readonly handling: {
    readonly drainSeconds: number;
    readonly rinseSeconds: number;
    readonly rinses: number;
    readonly rinseWaterL: number;
    readonly rinseEvery: number;
    readonly belowKelvin: number;
    readonly topUpCelsius: number;
    readonly coolToCelsius: number;
  };
  /** The dryer that is used, or null. */
  readonly dryer: Pick<Dryer, "name" | "capacity" | "celsius" | "minutes"> | null;
  readonly timeline: readonly TimelineEntry[];
  readonly advice: readonly Advice[];
  readonly cautions: readonly Caution[];
}
