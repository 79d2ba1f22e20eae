import type { ColumnName } from "./columns.js";

/** What a row of one event says. */
export interface LogEvent {
  readonly meaning: string;
  /** Of each list at least one cell must be filled in. */
  readonly needs: readonly (readonly ColumnName[])[];
  /** Cells that may be filled in beside them. */
  readonly takes: readonly ColumnName[];
}

const amounts = ["concentrateMl", "concentrateG", "waterMl"] as const;
const reading = ["L", "a", "b"] as const;

/** Cells that any row may have. */
export const anyEvent: readonly ColumnName[] = ["time", "bath", "event", "dye", "note"];

/**
 * Every event, and the cells that it needs. `bare` is written as a load or measured row of 0 seconds; the readings of a
 * measured row belong to the bath's last load.
 */
export const logEvents = {
  "made-up": {
    meaning: "a new filling of the bath; without amounts as its batch file makes it up",
    needs: [["dye"]],
    takes: [...amounts, "volumeL", "celsius", "dyeLot"],
  },
  load: {
    meaning: "parts were dipped; without seconds as long as the shade takes",
    needs: [["part"], ["parts"], ["seconds", "shade"]],
    takes: ["base", "celsius", "volumeL", ...reading, "good", "rejected", "powderLot", "dyeLot"],
  },
  "top-up": {
    meaning: "dye, water or both were added; without volumeL up to the mark",
    needs: [amounts],
    takes: ["volumeL", "celsius", "dyeLot"],
  },
  dump: { meaning: "the bath was thrown away", needs: [], takes: [] },
  measured: {
    meaning: "the bath was looked at, or a part of its last load was read or inspected when it was dry",
    needs: [["celsius", "volumeL", "L", "good", "rejected"]],
    takes: ["a", "b", "powderLot"],
  },
  bare: {
    meaning: "a part was read before it was dyed",
    needs: [["powderLot"], ["L"], ["seconds"]],
    takes: ["part", "shade", "base", "parts", ...reading],
  },
} as const satisfies Record<string, LogEvent>;

export type EventName = keyof typeof logEvents;
/** Events as they are written. */
export type WrittenEvent = Exclude<EventName, "bare">;
export const writtenEvents = Object.keys(logEvents).filter((name) => name !== "bare") as WrittenEvent[];

/** The event of a cell: in capitals or with blanks too. */
export function parseEvent(cell: string): WrittenEvent | undefined {
  const name = cell
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, "-");
  return writtenEvents.find((event) => event === name);
}
