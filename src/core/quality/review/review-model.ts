import type { Lab } from "../../model/colour.js";
import type { Estimated } from "../estimates/estimate.js";
import type { Learnable } from "../estimates/figures.js";

/** A load whose colour was read, on its bath's chart. */
export interface ReviewPoint {
  /** ISO 8601, local. */
  readonly time: string;
  readonly shade: string;
  readonly deltaE00: number;
  /** Of the part read less the shade: positive is lighter. */
  readonly deltaL: number;
  readonly deltaC: number;
  readonly deltaH: number;
  /** These and the average are of deltaL; null with fewer than two readings. */
  readonly individualsLimits: readonly [number, number] | null;
  readonly ewma: number | null;
  readonly ewmaLimits: readonly [number, number] | null;
  /** On any of the charts. */
  readonly out: boolean;
}

export type ChartedDifference = "deltaL" | "deltaC" | "deltaH" | "deltaE00";

/** One difference of a bath's loads in the order of time. */
export interface ReviewChart {
  readonly of: ChartedDifference;
  /** The lower one is null where only an excess counts. */
  readonly limits: readonly [number | null, number];
  readonly ewma: readonly number[];
  /** Places of the points that are out of control, from 0. */
  readonly out: readonly number[];
}

export type LikelyCause = "new lot" | "temperature" | "strength" | "time" | "not known";

/** Loads one after the other that chance does not explain. */
export interface ReviewRun {
  readonly from: string;
  readonly to: string;
  readonly loads: number;
  /** How they differ: lighter, duller. */
  readonly sides: readonly string[];
  readonly cause: LikelyCause;
  readonly said: string;
}

export interface ReviewBath {
  readonly bath: string;
  readonly loads: number;
  readonly parts: number;
  /** Of the parts that were inspected; null where none was. */
  readonly goodShare: number | null;
  readonly points: readonly ReviewPoint[];
  /** None with fewer than two readings. */
  readonly charts: readonly ReviewChart[];
  readonly runs: readonly ReviewRun[];
}

/** Dye that left its bath on parts of a kind in a month, in mL of concentrate or g of powder. */
export interface ReviewUse {
  readonly dye: string;
  readonly month: string;
  readonly part: string;
  readonly parts: number;
  readonly areaDm2: number;
  readonly takenUp: number;
  readonly draggedOut: number;
  readonly perPart: number;
  readonly perDm2: number;
}

/** Dye that a dye's baths were given and what became of it, in mL of concentrate or g of powder. */
export interface ReviewDye {
  readonly dye: string;
  readonly unit: "mL" | "g";
  readonly added: number;
  readonly takenUp: number;
  readonly draggedOut: number;
  readonly dumped: number;
  readonly rinseL: number;
  /** Added per part dyed: the refresh rate as it was, make-ups included. */
  readonly addedPerPart: number | null;
  readonly addedPerDm2: number | null;
}

export interface ReviewLot {
  readonly lot: string;
  readonly kind: "powder" | "dye";
  readonly dye: string;
  readonly loads: number;
  readonly deltaE00: number;
  readonly doubt95: number;
  readonly named: boolean;
  readonly shift: Lab;
  /** Of the bare part against that of the first lot; null where not both were read. */
  readonly bareDeltaE00: number | null;
}

/** What a dye's log teaches; a figure that is not told is the assumed one. */
export type ReviewEstimates = {
  readonly [Name in Exclude<Learnable, "uptakePerDm2" | "activationEnergyJPerMol">]: Estimated;
} & {
  readonly activationEnergyKJPerMol: Estimated;
  /** Of a liquid. */
  readonly uptakeMlPerDm2?: Estimated;
  /** Of a powder. */
  readonly uptakeGPerDm2?: Estimated;
  /** Loads whose colour was read. */
  readonly readings: number;
  readonly lastReadings: { readonly readings: number; readonly raw: number; readonly factor: number } | null;
};

/** Where a load of parts came from. */
export interface TracedLoad {
  /** ISO 8601, local. */
  readonly time: string;
  /** Of the log. */
  readonly row: number;
  readonly bath: string;
  readonly dye: string | null;
  readonly part: string;
  readonly shade: string | null;
  readonly parts: number;
  readonly powderLot: string | null;
  readonly dyeLot: string | null;
  /** When its bath was made up; null where the log does not say. */
  readonly madeUp: string | null;
}

/** What the bath log teaches. */
export interface Review {
  readonly baths: readonly ReviewBath[];
  readonly estimates: Readonly<Record<string, ReviewEstimates>>;
  readonly lots: readonly ReviewLot[];
  readonly dyes: readonly ReviewDye[];
  readonly use: readonly ReviewUse[];
  /** What to do now. */
  readonly actions: readonly string[];
  /** YAML for the batch file; empty where the log teaches nothing. */
  readonly paste: string;
}
