import { done, error, failed, type Outcome } from "../../core/fault.js";
import { inRow } from "../read/in-row.js";
import type { DumpRow, LoadRow, LogRow, MadeUpRow, MeasuredRow, TopUpRow } from "../row/log-row.js";

/** Rows that change a filling, or say what it was. */
export type FillingRow = LoadRow | TopUpRow | MeasuredRow;

/** A bath from one making up to the next, by time. */
export interface Filling {
  readonly madeUp: MadeUpRow;
  readonly rows: readonly FillingRow[];
  readonly dumped?: DumpRow;
}

/**
 * The fillings of a bath in the order of time. Rows before its first making up say nothing: what was in it is not known.
 * @param bath the tank's name
 * @example
 * fillingsOf([{ bath: "six", event: "made-up", dye: "brick" }, { bath: "six", event: "dump" }], "six").length // => 1
 * fillingsOf([{ bath: "six", event: "dump" }], "six") // => []
 */
export function fillingsOf(rows: readonly LogRow[], bath: string): readonly Filling[] {
  const found: { madeUp: MadeUpRow; rows: FillingRow[]; dumped?: DumpRow }[] = [];
  for (const row of rows) {
    if (row.bath !== bath || row.event === "bare") continue;
    const last = found.at(-1);
    if (row.event === "made-up") found.push({ madeUp: row, rows: [] });
    else if (last === undefined || last.dumped !== undefined) continue;
    else if (row.event === "dump") last.dumped = row;
    else last.rows.push(row);
  }
  return found;
}

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(", ");

/** What is in a bath now, or why the log does not say. */
export function lastFilling(rows: readonly LogRow[], bath: string, dye: string): Outcome<Filling> {
  const last = fillingsOf(rows, bath).at(-1);
  if (last === undefined) {
    const others = [...new Set(rows.map((row) => row.bath))].filter((name) => name !== bath);
    const there = rows.some((row) => row.bath === bath);
    return failed(
      error(
        "log-no-bath",
        [],
        there
          ? `the log does not say when the bath in tank "${bath}" was made up`
          : `the log has no bath in tank "${bath}"`,
        there || others.length === 0
          ? "record how it was made up, or write start: fresh"
          : `its baths are ${quoted(others)}; record how this one was made up, or write start: fresh`,
      ),
    );
  }
  const { madeUp, dumped } = last;
  if (dumped !== undefined)
    return failed(
      inRow(
        dumped.row!,
        "event",
        error(
          "log-dumped",
          [],
          `the bath in tank "${bath}" was dumped on ${dumped.time.text}`,
          "write start: fresh, or record how it was made up again",
        ),
      ),
    );
  const strange = [madeUp, ...last.rows].find((row) => row.dye !== undefined && row.dye !== dye);
  if (strange !== undefined)
    return failed(
      inRow(
        strange.row!,
        "dye",
        error(
          "log-other-dye",
          [],
          `tank "${bath}" holds dye "${strange.dye}", not "${dye}"`,
          `write dye: ${strange.dye} for this bath, or start: fresh`,
        ),
      ),
    );
  return done(last);
}
