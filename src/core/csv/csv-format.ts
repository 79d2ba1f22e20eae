import type { CsvErrorCode, Options } from "csv-parse";
import { error, type Fault } from "../fault.js";
import { delimiterOf } from "./delimiter.js";

/** Longest row that is read [bytes]; one quote too few makes a row of all that follows. */
export const longestRow = 1 << 20;

/**
 * How every CSV file is read: a byte order mark is dropped, lines may end in any way, even in several ways in one file,
 * and rows may be shorter or longer than the header. `header` is the line with the names of the columns.
 */
export const csvFormat = (header: string): Options => ({
  bom: true,
  delimiter: delimiterOf(header),
  record_delimiter: ["\r\n", "\n", "\r"],
  relax_column_count: true,
  relax_quotes: true,
  max_record_size: longestRow,
});

/** One row and its number, as a spreadsheet counts them. */
export interface CsvRow {
  readonly row: number;
  readonly fields: readonly string[];
}

/** Whether a row holds nothing. */
export const isBlank = (fields: readonly string[]): boolean => fields.every((cell) => cell.trim() === "");

/** Why a row ends the reading of a file. */
export function csvFault(code: CsvErrorCode, row: number): Fault {
  if (code === "CSV_QUOTE_NOT_CLOSED" || code === "CSV_MAX_RECORD_SIZE")
    return error(
      "csv-quote",
      ["row", row],
      `row ${row}: a quote is not closed, or the row is longer than ${longestRow / 1024} KiB; nothing after it was read`,
      "close the quote, or double it where it is part of the text",
    );
  return error("csv", ["row", row], `row ${row}: this is not CSV; nothing after it was read`);
}

/** The fault of bytes that are not text in UTF-8. */
export const notText = (): Fault =>
  error("csv-not-text", [], "this is not text in UTF-8", "save it as CSV in UTF-8");
