import { type Fault, warning } from "../../core/fault.js";
import { inspects } from "../row/inspect-loads.js";
import type { LogRow } from "../row/log-row.js";
import { inRow } from "./in-row.js";

/** Warnings where the time goes back from one row to the next; what was read of a load later bears the load's time. */
export const goingBack = (rows: readonly LogRow[]): Fault[] =>
  rows
    .filter((row) => !inspects(row))
    .flatMap(({ row, time }, i, all) => {
      const before = all[i - 1];
      return before === undefined || before.time.seconds <= time.seconds
        ? []
        : [
            inRow(
              row!,
              "time",
              warning(
                "log-time-back",
                [],
                `${time.text} is before ${before.time.text} in row ${before.row}`,
                "rows count in the order of their times; correct the one that is wrong",
              ),
            ),
          ];
    });

export const notDone = (rows: readonly number[]): Fault[] =>
  rows.length === 0
    ? []
    : [
        warning(
          "log-unconfirmed",
          ["row", rows[0]!, "time"],
          rows.length === 1
            ? `row ${rows[0]} has no time: it is planned, not done, and does not count`
            : `rows ${rows.slice(0, 5).join(", ")}${rows.length > 5 ? " and more" : ""} have no time: they are planned, not done, and do not count`,
          "fill in the times of those that were done, and delete the others",
        ),
      ];
