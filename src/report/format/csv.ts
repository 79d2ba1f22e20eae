import { stringify } from "csv-stringify/sync";
import type { Column, Table } from "../table.js";

/** How a table is written for a spreadsheet. */
export interface CsvStyle {
  readonly delimiter: string;
  readonly decimal: "." | ",";
  /** Start with a byte order mark, which some spreadsheets need to read UTF-8. */
  readonly bom: boolean;
}

/** A formula behind white space, which some spreadsheets drop. */
const hiddenFormula = /^\s+[=+\-@\uFF0B\uFF0D\uFF1D\uFF20]/;

/** Text that is a signed number, which no spreadsheet runs as a formula. */
const signedNumber = /^[+-](?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i;

/**
 * A table as RFC 4180 text: CRLF, a header row, quotes where needed. A text cell that a spreadsheet would run
 * as a formula, at once or behind white space, starts with an apostrophe; a negative number stays a number. Without `header` the text goes on from
 * where an earlier one ended.
 */
export function csv(table: Table, { delimiter, decimal, bom }: CsvStyle, header = true): string {
  const number = (value: number, column: Column | undefined): string =>
    (column?.digits ?? String)(value).replace(".", decimal);
  return stringify(table.rows as (string | number | null)[][], {
    columns: table.columns.map(({ key }) => key),
    header,
    delimiter,
    bom: bom && header,
    record_delimiter: "windows",
    escape_formulas: true,
    cast: {
      string: (value) =>
        signedNumber.test(value)
          ? { value, escape_formulas: false }
          : hiddenFormula.test(value)
            ? { value: `'${value}`, escape_formulas: false }
            : value,
      number: (value, { index }) => number(value, table.columns[index]),
    },
  });
}
