/**
 * The checked batch: what the spec reader hands to the arithmetic. Names are resolved (an order holds its
 * part, not the part's name), defaults are filled in, and every number carries its unit in its name.
 * Fractions are plain numbers (0.1 for 10 %); money is in the batch's currency.
 */
import type { Colour, IlluminantName, Lab, ObserverName } from "./colour.js";

export type { Colour, IlluminantName, Lab, ObserverName } from "./colour.js";

/** Dye in water: a liquid concentrate by volume fraction, or a powder by mass per volume of cold liquor. */
export type Dilution =
  | { readonly kind: "liquid"; readonly fraction: number }
  | { readonly kind: "powder"; readonly gramsPerL: number };

export type LawName = "first-order" | "second-order" | "parabolic" | "cegarra-puente";
export type TopUpRule = "none" | "level" | "strength";
export type Insulation = "none" | "housing" | "foam";
export type Cover = "none" | "lid" | "balls";

/** Price of a thing and the hours of use after which it is worn out. */
export interface Equipment {
  readonly price: number;
  readonly lifeHours: number;
}

export interface Rates {
  readonly electricityPerKwh?: number;
  readonly waterPerM3?: number;
  readonly labourPerHour?: number;
  readonly disposalPerL?: number;
}

export interface Room {
  readonly celsius: number;
  /** Relative humidity, 0..1. */
  readonly humidity: number;
}

export interface Tank {
  readonly name: string;
  /** Working volume, measured hot. */
  readonly volumeL: number;
  /** To the brim. */
  readonly capacityL: number;
  readonly surfaceCm2: number;
  /** True where no surface was given and a box as deep as it is wide was taken. */
  readonly surfaceAssumed: boolean;
  readonly wallAreaDm2: number;
  readonly insulation: Insulation;
  readonly cover: Cover;
  readonly heaterW?: number;
  readonly heaterEfficiency: number;
  readonly agitationW: number;
  /** With less liquor, heater and agitation must not run [L, hot]. */
  readonly leastL?: number;
  readonly equipment?: Equipment;
}

export interface Dryer {
  readonly name: string;
  /** Parts per run. */
  readonly capacity: number;
  readonly celsius: number;
  readonly minutes: number;
  readonly powerW: number;
  readonly duty: number;
  readonly equipment?: Equipment;
}

export interface Base {
  readonly name: string;
  readonly lab?: Lab;
  /** Where it is given as a screen shows it; `lab` is then this under one reading. */
  readonly hex?: string;
}

/** How surely a figure is known that evidence was found for. */
export interface Found {
  /** Variance left of the assumed figure's own: 1 where the evidence tells nothing. */
  readonly assumedShare: number;
  readonly interval95: readonly [number, number];
}

export interface Swatch {
  /** 0: the bare base as it was then. */
  readonly seconds: number;
  readonly colour: Colour;
  /** Of a weakened bath; absent: 1, a fresh one. */
  readonly strength?: number;
  /** Where not the temperature of the others. */
  readonly celsius?: number;
}

export interface Dye {
  readonly name: string;
  /** Per L of concentrate or per kg of powder, as the dilution says. */
  readonly price?: number;
  readonly dilution: Dilution;
  readonly celsius: number;
  /** The bath that swatches, rate and times of shades belong to, where baths are made up otherwise. */
  readonly measuredAt?: { readonly dilution?: Dilution; readonly celsius?: number };
  /** What the swatches were dyed on. */
  readonly base?: Base;
  readonly reading: { readonly illuminant: IlluminantName; readonly observer: ObserverName };
  /** In a fresh bath at the dilution and temperature above where they do not say otherwise; in the order of the file. */
  readonly swatches: readonly Swatch[];
  readonly law: LawName | "auto";
  readonly ratePerSecond?: number;
  readonly saturation?: number;
  /** On the shelf: mL of concentrate or g of powder. */
  readonly stock?: number;
  /** From order to delivery. */
  readonly leadTimeDays?: number;
  readonly activationEnergyJPerMol: number;
  /** Nobody gave it. */
  readonly activationEnergyAssumed: boolean;
  /** p of t(s) = t(1) s^-p, where it is given. */
  readonly strengthExponent?: number;
  /** Factor on all times, as the bath log taught it; absent: 1. */
  readonly timeFactor?: number;
  /** κ: mL concentrate or g powder taken up per dm² at depth 1. */
  readonly uptakePerDm2: number;
  /** Nobody gave it, or evidence leaves more than a tenth of the assumed figure's variance. */
  readonly uptakeAssumed: boolean;
  readonly uptakeFound?: Found;
  readonly shelfLifeDays?: number;
  readonly notes?: string;
  /** Of a mix: its dyes, from which its dilution, uptake and reading follow; it has no swatches, rate or price of its own. */
  readonly mix?: Mix;
}

/** A dye in a mix. */
export interface MixPart {
  readonly dye: Dye;
  /** In a litre of the mixed bath, cold. */
  readonly dilution: Dilution;
  /** Relative to the fresh bath that the dye was measured in. */
  readonly strength: number;
}

/** Several dyes in one bath. */
export interface Mix {
  readonly parts: readonly MixPart[];
  /** Dips whose colour was read, each in a bath of these strengths of the parts. */
  readonly trials: readonly {
    readonly seconds: number;
    readonly strengths: readonly number[];
    readonly colour: Colour;
  }[];
}

export interface Part {
  readonly name: string;
  readonly massG: number;
  /** All wetted surface. */
  readonly areaDm2: number;
  readonly volumeCm3: number;
  /** True where the mass is that of the model's volume at a density that nobody gave. */
  readonly massAssumed?: boolean;
  /** Box around the model file that the part was measured from. */
  readonly boxMm?: readonly [x: number, y: number, z: number];
  /** Cost of the undyed part: one number, or one per base name. */
  readonly blank?: number | ReadonlyMap<string, number>;
  /** Undyed parts on the shelf: whatever their base, or by base name. */
  readonly stock?: number | ReadonlyMap<string, number>;
  /** From order to delivery of undyed parts. */
  readonly leadTimeDays?: number;
  readonly perLoad?: number;
  /** Its own, where it carries out more or less than others; absent: that of the handling. */
  readonly dragOutMlPerDm2?: number;
  readonly heatCapacityKjPerKgK: number;
}

/** What a shade asks for: the colour of a dip time in a fresh bath, of a swatch, or a colour as read. */
export type ShadeTarget =
  | { readonly kind: "time"; readonly seconds: number }
  | { readonly kind: "swatch"; readonly seconds: number }
  | { readonly kind: "colour"; readonly colour: Colour };

export interface Shade {
  readonly name: string;
  readonly dye: Dye;
  readonly target: ShadeTarget;
  /** CIEDE2000. */
  readonly tolerance: number;
}

export type BathStart =
  | { readonly kind: "fresh" }
  | {
      readonly kind: "kept";
      readonly volumeL: number;
      readonly strength: number;
      /** Of each dye of a mix; absent: all as strong as that. */
      readonly strengthEach?: readonly number[];
      readonly ageDays: number;
      /** Dyed so far. */
      readonly areaDm2: number;
      /** The last row of the bath log that it follows from; absent where the batch file says it all. */
      readonly log?: { readonly file: string; readonly row: number; readonly time: string };
    };

export interface Bath {
  /** Position in the batch file's list. */
  readonly index: number;
  readonly tank: Tank;
  readonly dye: Dye;
  readonly start: BathStart;
  /** One dip in the bath as it is, which corrects all times in it. */
  readonly trial?: { readonly seconds: number; readonly colour: Colour };
  readonly topUp: TopUpRule;
  readonly after: "keep" | "dump";
  /** How often this batch is repeated on the bath. */
  readonly everyDays?: number;
}

export interface Order {
  /** Position in the batch file's list. */
  readonly index: number;
  readonly part: Part;
  /** Absent: the parts are sold undyed. */
  readonly shade?: Shade;
  readonly base?: Base;
  readonly quantity: number;
  /** Last day on which it may be ready, ISO 8601. */
  readonly due?: string;
}

export interface DyedOrder extends Order {
  readonly shade: Shade;
}

/** A figure of the handling that nobody gave, by its key in the batch file. */
export type AssumedHandling = AssumedLoadTime | AssumedMinutes | "liquorRatio";
/** Times of a load, in seconds. */
export type AssumedLoadTime = "load" | "loadPart" | "drain" | "rinse" | "unload" | "unloadPart";
/** Times of a bath or a dryer run, in minutes. */
export type AssumedMinutes = "dryerLoading" | "setUp" | "cleanUp";

export interface Handling {
  /** Per load, and per part of it. */
  readonly loadSeconds: number;
  readonly loadPartSeconds: number;
  readonly drainSeconds: number;
  /** All rinses of a load together. */
  readonly rinseSeconds: number;
  /** Baths of clear water, one after the other. */
  readonly rinses: number;
  /** In each. */
  readonly rinseWaterL: number;
  /** Loads for which one filling serves. */
  readonly rinseEvery: number;
  readonly unloadSeconds: number;
  readonly unloadPartSeconds: number;
  /** How far under its temperature a bath may be when a load goes in [K]. */
  readonly belowKelvin: number;
  /** Of what is topped up; absent: the room's. */
  readonly topUpCelsius?: number;
  /** To measure and pour one top-up; absent: no time of its own, as for the rinse water. */
  readonly topUpSeconds?: number;
  /** To change the rinse water, all baths of it. */
  readonly rinseChangeSeconds?: number;
  /** A bath is emptied, poured or cleaned up at this temperature. */
  readonly coolToCelsius: number;
  readonly dryerLoadingMinutes: number;
  readonly setUpMinutes: number;
  readonly cleanUpMinutes: number;
  readonly timingSeconds: number;
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
  readonly dragOutMlPerDm2: number;
  readonly dragOutAssumed: boolean;
  readonly dragOutFound?: Found;
  readonly liquorRatioLPerKg: number;
  readonly freeboard: number;
  /** Times and ratios that were left at their default and that costs rest on. */
  readonly assumed: readonly AssumedHandling[];
}

export interface Pricing {
  readonly overhead: number;
  readonly fees: number;
  readonly margin: number;
  readonly tax: number;
  /** A price is rounded up to the next amount that ends so: 0.90. */
  readonly ending?: number;
}

export interface Batch {
  readonly name: string;
  /** ISO 8601. */
  readonly date?: string;
  /** ISO 4217. */
  readonly currency?: string;
  /** Minutes after midnight at which work starts; absent: times count from 0. */
  readonly startAtMinute?: number;
  /** The bath log, where there is one. */
  readonly log?: string;
  readonly rates: Rates;
  readonly room: Room;
  readonly dryers: readonly Dryer[];
  readonly bases: readonly Base[];
  readonly dyes: readonly Dye[];
  readonly parts: readonly Part[];
  readonly shades: readonly Shade[];
  readonly tanks: readonly Tank[];
  readonly baths: readonly Bath[];
  readonly orders: readonly Order[];
  readonly handling: Handling;
  readonly consumables: { readonly perBath: number; readonly perLoad: number; readonly perPart: number };
  /** Good parts of those started, 0..1. */
  readonly yield: number;
  /** Parts that a second dip makes good, of those that missed their shade, 0..1; none where absent. */
  readonly rework?: number;
  readonly pricing?: Pricing;
  readonly limits: { readonly costPerPart?: number };
}
