import type { LawName } from "../../core/model/batch.js";
import type { UptakeFits } from "../../core/uptake/fit/fit-uptake.js";
import type { UptakeTable } from "../../core/uptake/fit/uptake-table.js";
import { uptakeLaws } from "../../core/uptake/law/laws.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";

/** What a report on a fit needs. */
export interface FitFacts {
  /** File, "-" for stdin. */
  readonly name: string;
  readonly table: UptakeTable;
  readonly fits: UptakeFits;
  readonly warnings: readonly Diagnostic[];
}

/** The readings by the name people know them under. */
export const readingsSaid = ({ table }: FitFacts): string =>
  table.meaning === "ks" ? "K/S" : table.uptakeColumn;

/** What the constants of a law without a plateau mean; nothing for the others. */
export const noteOn = (law: LawName): string | undefined =>
  uptakeLaws[law].plateau
    ? undefined
    : "no plateau: in its place the uptake at the longest time, rate = 1/longest";
