import { CsvError, parse } from "csv-parse/sync";
import type { DecimalMark } from "../../core/colour/csv/csv-number.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Span } from "../../diagnostics/diagnostic.js";
import type { Locate } from "../../diagnostics/to-diagnostic.js";
import { decimalShown, sniffDelimiter } from "../csv/sniff.js";
import { cellsOfLine } from "./cells-of-line.js";

/** A small CSV file read whole, every row of which can be found again. */
export interface PlacedRows {
  /** Blank rows too, so that their numbers are those of a spreadsheet. */
  readonly rows: readonly (readonly string[])[];
  readonly decimal: DecimalMark;
  /** The place of `["row", number]`, counted from 1, or of `["row", number, column name]`. */
  readonly locate: Locate;
}

interface ParsedRow {
  readonly record: readonly string[];
  /** `lines` that ended with this row. */
  readonly info: { readonly lines: number };
}

const lineEnd = /\r\n|\n|\r/;

/** The decimal sign of a file: the comma where cells show it and none shows a point. */
function decimalOf(rows: readonly (readonly string[])[]): DecimalMark {
  const shown = new Set(rows.slice(1).flatMap((cells) => cells.map(decimalShown)));
  return shown.has("comma") && !shown.has("point") ? "comma" : "point";
}

/** Rows of a CSV file parted by comma, semicolon or tab, whichever its first line uses. */
export function placedRows(name: string, source: string): Outcome<PlacedRows> {
  const text = source.replace(/^\ufeff/, "");
  if (text.includes("\0") || text.includes("\ufffd"))
    return failed(error("csv-not-text", [], `${name} is not text in UTF-8`, "save it as CSV in UTF-8"));
  const lines = text.split(lineEnd);
  const delimiter = sniffDelimiter(lines[0]!);
  let parsed: readonly ParsedRow[];
  try {
    parsed = parse(text, {
      delimiter,
      record_delimiter: ["\r\n", "\n", "\r"],
      info: true,
      relax_column_count: true,
      relax_quotes: true,
    }) as unknown as ParsedRow[];
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    return failed(
      thrown.code === "CSV_QUOTE_NOT_CLOSED"
        ? error(
            "csv-quote",
            [],
            `${name}: a quote is not closed`,
            "close it, or double it where it belongs to the text",
          )
        : error("csv", [], `${name} cannot be read as CSV`),
    );
  }
  const rows = parsed.map(({ record }) => record);
  const span = (line: number, column: number, length: number): Span => ({
    file: name,
    line,
    column,
    length: Math.max(1, length),
    text: lines[line - 1] ?? "",
  });
  const locate: Locate = ([kind, row, column]) => {
    if (kind !== "row" || typeof row !== "number") return undefined;
    const line = (parsed[row - 2]?.info.lines ?? 0) + 1;
    const whole = lines[line - 1] ?? "";
    const index = (rows[0] ?? []).findIndex((cell) => cell.trim() === column);
    const cell = index < 0 ? undefined : cellsOfLine(whole, delimiter)[index];
    return cell === undefined ? span(line, 1, whole.length) : span(line, cell.start + 1, cell.length);
  };
  return done({ rows, decimal: decimalOf(rows), locate });
}
