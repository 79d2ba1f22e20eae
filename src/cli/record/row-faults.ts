import { error, type Fault, warning } from "../../core/fault.js";
import type { LogStyle } from "../../log/read/log-style.js";
import { inspectLoads, inspects } from "../../log/row/inspect-loads.js";
import type { LogRow } from "../../log/row/log-row.js";
import type { LogValues } from "../../log/row/log-values.js";
import { optionOf } from "./cells.js";

/** A fault of a cell as one of the option that fills it. */
export function ofOption({ path: [column], ...fault }: Fault): Fault {
  const option = optionOf(String(column));
  return fault.code === "log-needs"
    ? { ...fault, path: [], help: `add ${option}` }
    : { ...fault, path: [option] };
}

/** Cells that the log has no column for. */
export const withoutColumn = (values: LogValues, { columns }: LogStyle): Fault[] =>
  Object.keys(values)
    .filter((name) => !columns.includes(name))
    .map((name) =>
      error(
        "log-column-missing",
        [optionOf(name)],
        `the log has no column ${name}`,
        `add ${name} to its first row, or leave the option out`,
      ),
    );

/** What is wrong with a new row only beside those that are there. */
export function amongOthers(row: LogRow, rows: readonly LogRow[]): Fault[] {
  if (inspects(row))
    return inspectLoads([...rows.filter(({ time }) => time.seconds <= row.time.seconds), row])
      .faults.filter((found) => found.row === row)
      .map(({ fault }) => ofOption(fault));
  const last = rows.at(-1);
  return last === undefined || last.time.seconds <= row.time.seconds
    ? []
    : [
        warning(
          "log-time-back",
          ["--time"],
          `${row.time.text} is before the last row, of ${last.time.text}`,
          "rows count in the order of their times; correct the one that is wrong",
        ),
      ];
}
