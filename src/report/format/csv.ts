import { stringify } from "csv-stringify/sync";
import type { CsvStyle } from "../csv-style.js";
import type { Column, Table } from "../table.js";
import type { RowFormat } from "./row-format.js";

/** A formula behind white space, which some spreadsheets drop. */
const hiddenFormula = /^\s+[=+\-@\uFF0B\uFF0D\uFF1D\uFF20]/;

/** Where some reader begins a new line: RFC 4180 asks for quotes around its own line end only. */
const lineEnd = /[\n\v\f\r\u0085\u2028\u2029]/;

/** Text that is a signed number, which no spreadsheet runs as a formula. */
const signedNumber = /^[+-](?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i;

/**
 * A table as RFC 4180 text: CRLF, a header row, quotes where needed. A text cell that a spreadsheet would run
 * as a formula, at once or behind white space, starts with an apostrophe; a negative number stays a number. Without
 * `header` the text continues an earlier one.
 */
export function csv(table: Table, { delimiter, decimal, bom }: CsvStyle, header = true): string {
  const number = (value: number, column: Column | undefined): string => {
    const text = (column?.digits ?? String)(value);
    return decimal === "." ? text : text.replace(".", decimal);
  };
  return stringify(table.rows as (string | number | null)[][], {
    columns: table.columns.map(({ key }) => key),
    header,
    delimiter,
    bom: bom && header,
    record_delimiter: "windows",
    escape_formulas: true,
    quoted_match: lineEnd,
    // An empty line would be no row to most readers.
    quoted_empty: table.columns.length === 1,
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

/** The columns of a report, then its rows. */
export const csvRows: RowFormat = {
  headed: true,
  besideRows: false,
  open: ({ columns, cells }, style) => ({
    head: () => csv({ columns, rows: [] }, style),
    rows: (some) => {
      const rows = cells(some);
      return rows.length === 0 ? "" : csv({ columns, rows }, style, false);
    },
    tail: () => [],
  }),
};
