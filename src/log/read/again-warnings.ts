import { type Fault, warning } from "../../core/fault.js";
import { inspects } from "../row/inspect-loads.js";
import type { LogRow } from "../row/log-row.js";
import { inRow } from "./in-row.js";

/** Warnings where a row says in every cell what a row above it says; readings of a load are judged with the load. */
export function writtenTwice(rows: readonly LogRow[]): Fault[] {
  const first = new Map<string, number>();
  return rows.flatMap(({ row, ...said }) => {
    const cells = JSON.stringify(said);
    const other = first.get(cells);
    if (other === undefined) first.set(cells, row!);
    return other === undefined || inspects(said)
      ? []
      : [
          inRow(
            row!,
            "time",
            warning(
              "log-again",
              [],
              `row ${other} says the same`,
              "both rows count: delete one if it happened once",
            ),
          ),
        ];
  });
}
