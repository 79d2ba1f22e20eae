import type { CsvStyle } from "../csv-style.js";
import type { JsonRecord, RowReport } from "../row-report.js";

/** Writes a report piece by piece. */
export interface RowWriter<Some> {
  /** What comes before the first row. */
  readonly head: () => string;
  readonly rows: (some: Some) => string;
  /** In pieces, since it may be long. `end` is what JSON has after everything else. */
  readonly tail: (end: JsonRecord) => Iterable<string>;
}

/** A format in which rows are written as they come. */
export interface RowFormat {
  /** The head names the columns or the currency: the first rows wait until these are known. */
  readonly headed: boolean;
  /** Writes what a report has beside its rows, too. */
  readonly besideRows: boolean;
  readonly open: <Some>(report: RowReport<Some>, style: CsvStyle) => RowWriter<Some>;
}
