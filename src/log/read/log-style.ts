import type { DecimalMark } from "../../core/csv/csv-number.js";
import { delimiterOf, headerLine } from "../../core/csv/delimiter.js";
import { columnNames } from "../row/columns.js";

/** How the rows of one log are written. */
export interface LogStyle {
  readonly delimiter: string;
  readonly decimal: DecimalMark;
  readonly lineEnd: string;
  /** Names of the columns in the order of the file, unknown ones among them. */
  readonly columns: readonly string[];
}

/** A log that is begun, unless its user wants it otherwise. */
export const newStyle: LogStyle = { delimiter: ",", decimal: "point", lineEnd: "\r\n", columns: columnNames };

/** The decimal mark that goes with a delimiter, as spreadsheets have it; beside tabs it may be either. */
export function markBeside(delimiter: string): DecimalMark | undefined {
  if (delimiter === ";") return "comma";
  return delimiter === "," ? "point" : undefined;
}

/** How an existing log is written; `decimal` where a number shows it. */
export function styleOf(
  text: string,
  columns: readonly string[],
  decimal: DecimalMark | undefined,
): LogStyle {
  const delimiter = delimiterOf(headerLine(text));
  return {
    delimiter,
    decimal: decimal ?? markBeside(delimiter) ?? newStyle.decimal,
    lineEnd: /\r\n|\n|\r/.exec(text.trimStart())?.[0] ?? newStyle.lineEnd,
    columns,
  };
}
