import { CsvError, parse } from "csv-parse/sync";
import { done, failed, type Outcome } from "../fault.js";
import { cellsOfLine } from "./cells-of-line.js";
import { type CsvRow, csvFault, csvFormat, isBlank, notText } from "./csv-format.js";
import { delimiterOf, headerLine } from "./delimiter.js";

/** A place in a text. */
export interface CsvPlace {
  /** Counted from 1, like `column`. */
  readonly line: number;
  readonly column: number;
  readonly length: number;
  /** The whole line, without its end. */
  readonly text: string;
}

/** A small CSV file read whole. */
export interface CsvText {
  /** The first row that holds anything; absent in an empty file. */
  readonly header?: CsvRow;
  /** The rows below it; blank ones are left out and still counted. */
  readonly rows: readonly CsvRow[];
  /** Where a row is in the text, or its cell in a column. */
  readonly place: (row: number, column?: number) => CsvPlace;
}

interface ParsedRow {
  readonly record: string[];
  /** `lines` that ended with this row. */
  readonly info: { readonly lines: number };
}

const lineEnd = /\r\n|\n|\r/;

/** Reads the text of a CSV file, its columns separated by comma, semicolon or tab, whichever its first line uses. */
export function readCsv(given: string): Outcome<CsvText> {
  const text = given.replace(/^\ufeff/, "");
  if (text.includes("\0") || text.includes("\ufffd")) return failed(notText());
  const lines = text.split(lineEnd);
  const first = headerLine(text);
  let parsed: readonly ParsedRow[];
  try {
    parsed = parse(text, { ...csvFormat(first), info: true }) as unknown as ParsedRow[];
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    return failed(csvFault(thrown.code, Number(thrown.records) + 1));
  }
  const all: CsvRow[] = [];
  for (const [index, { record }] of parsed.entries())
    if (!isBlank(record)) all.push({ row: index + 1, fields: record });
  const [header, ...rows] = all;
  const place = (row: number, column?: number): CsvPlace => {
    const line = (parsed[row - 2]?.info.lines ?? 0) + 1;
    const whole = lines[line - 1] ?? "";
    const cell = column === undefined ? undefined : cellsOfLine(whole, delimiterOf(first))[column];
    return {
      line,
      column: (cell?.start ?? 0) + 1,
      length: Math.max(1, cell?.length ?? whole.length),
      text: whole,
    };
  };
  return done({ ...(header === undefined ? {} : { header }), rows, place });
}
