import type { Lab } from "../../core/model/colour.js";
import type { LocalTime } from "./local-time.js";

/** Dye and water that were added, measured cold; what is absent was not written down. */
export interface AddedAmounts {
  readonly concentrateMl?: number;
  readonly concentrateG?: number;
  readonly waterMl?: number;
}

/** What was read or inspected of a load. */
export interface Inspection {
  /** Of one dried part, under the dye's reading. */
  readonly lab?: Lab;
  readonly good?: number;
  readonly rejected?: number;
  readonly powderLot?: string;
}

interface Happened {
  /** In the file, as a spreadsheet counts rows; absent for one that is not in the file yet. */
  readonly row?: number;
  readonly time: LocalTime;
  /** The tank's name. */
  readonly bath: string;
  readonly dye?: string;
  readonly note?: string;
}

/** A new filling of a bath. */
export interface MadeUpRow extends Happened, AddedAmounts {
  readonly event: "made-up";
  readonly dye: string;
  readonly celsius?: number;
  readonly volumeL?: number;
  readonly dyeLot?: string;
}

/** Parts that were dipped. */
export interface LoadRow extends Happened, Inspection {
  readonly event: "load";
  readonly part: string;
  readonly parts: number;
  /** There where `seconds` is absent. */
  readonly shade?: string;
  readonly seconds?: number;
  readonly base?: string;
  /** Of the bath just before the parts went in. */
  readonly celsius?: number;
  /** Hot, after the load. */
  readonly volumeL?: number;
  readonly dyeLot?: string;
}

/** Dye, water or both added; one of the amounts is there. */
export interface TopUpRow extends Happened, AddedAmounts {
  readonly event: "top-up";
  /** Hot, after the top-up; absent: to the mark. */
  readonly volumeL?: number;
  readonly celsius?: number;
  readonly dyeLot?: string;
}

/** A bath thrown away. */
export interface DumpRow extends Happened {
  readonly event: "dump";
}

/** A bath looked at: `celsius`, `volumeL` or both are there, unless the row only inspects its bath's last load. */
export interface MeasuredRow extends Happened, Inspection {
  readonly event: "measured";
  readonly celsius?: number;
  readonly volumeL?: number;
}

/** A part of a powder lot read before it was dyed. */
export interface BareRow extends Happened {
  readonly event: "bare";
  readonly lab: Lab;
  readonly powderLot: string;
  readonly part?: string;
  readonly shade?: string;
  readonly base?: string;
  readonly parts?: number;
}

/** One thing that happened, checked. */
export type LogRow = MadeUpRow | LoadRow | TopUpRow | DumpRow | MeasuredRow | BareRow;
