import { cellNumber, extraCells } from "../../core/csv/csv-cell.js";
import type { CsvRow } from "../../core/csv/csv-format.js";
import type { CsvHeader } from "../../core/csv/csv-header.js";
import type { DecimalMark } from "../../core/csv/csv-number.js";
import { error, type Fault } from "../../core/fault.js";
import { columnNames, columnOf } from "../row/columns.js";
import { parseLocalTime } from "../row/local-time.js";
import type { LogValues } from "../row/log-values.js";
import { inRow } from "./in-row.js";
import { numberAlone, thousandsFault } from "./log-numbers.js";
import type { LogStyle } from "./log-style.js";

const numberHelp = "write the number alone, without a unit and without marks between thousands";

/** The filled cells of a row, or what is wrong with them; `marks`: the decimal marks of all its log. */
export function readCells(
  { row, fields }: CsvRow,
  { at }: CsvHeader,
  style: LogStyle,
  marks: readonly DecimalMark[],
): { readonly values: LogValues; readonly faults: readonly Fault[] } {
  const values: Record<string, unknown> = {};
  const faults: Fault[] = [];
  for (const name of columnNames) {
    const column = at(name);
    const cell = column === undefined ? "" : (fields[column] ?? "").trim();
    if (column === undefined || cell === "") continue;
    const { kind } = columnOf(name);
    if (kind === "text") values[name] = cell;
    else if (kind === "number") {
      const thousands = thousandsFault(cell, marks, style);
      const number =
        thousands === undefined
          ? cellNumber(fields, column, row, name, numberAlone, numberHelp)
          : inRow(row, name, thousands);
      if (typeof number === "number") values[name] = number;
      else faults.push(number);
    } else {
      const time = parseLocalTime(cell);
      if (time !== undefined) values[name] = time;
      else
        faults.push(
          inRow(
            row,
            name,
            error(
              "log-time",
              [],
              `"${cell}" is not a date and time`,
              "write 2027-04-16T09:30 or 16.04.2027 09:30, without a zone",
            ),
          ),
        );
    }
  }
  return { values, faults };
}

/** Rows that cannot be read as one event: longer or shorter than the header. */
export function shapeFault({ row, fields }: CsvRow, { names }: CsvHeader): Fault | undefined {
  if (fields.length >= names.length) return extraCells(fields, names.length, row);
  return error(
    "csv-row-short",
    ["row", row],
    `row ${row}: the row ends before column ${names[fields.length]}: it was cut off, or cells are missing`,
    "fill in the missing cells, or delete the row",
  );
}
