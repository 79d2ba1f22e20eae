import { basename, dirname, join } from "node:path";
import { type Fault, warning } from "../../core/fault.js";
import type { Appended, Io } from "../io.js";

/** A spreadsheet that has the log open would write over the row when it saves. */
export function openElsewhere(path: string, io: Io): Fault[] {
  const lock = join(dirname(path), `.~lock.${basename(path)}#`);
  return io.sizeOf?.(lock) === undefined
    ? []
    : [
        warning(
          "log-open",
          [],
          `a spreadsheet has ${path} open: if it saves now, this row is lost`,
          "close it there without saving, or load the file again before you go on",
        ),
      ];
}

/** Longest part of a piece that a message shows. */
const shownAtMost = 60;

/** What crashes had left of rows, now beside the log. */
export const tornRows = (path: string, { setAside }: Appended): Fault[] =>
  setAside.map((piece) =>
    warning(
      "log-torn",
      [],
      `a row was cut off, by a crash or as it was typed: "${piece.slice(0, shownAtMost)}${piece.length > shownAtMost ? "…" : ""}" is now in ${path}.torn`,
      "record it again if it happened",
    ),
  );
