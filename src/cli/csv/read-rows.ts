import { type CsvError, parse } from "csv-parse";
import { error, type Fault } from "../../core/fault.js";
import { sniffDelimiter } from "./sniff.js";

/** One row and its number; the header is row 1. */
export interface CsvRow {
  readonly row: number;
  readonly fields: readonly string[];
}

/** Longest row read; one quote too few makes a row of all that follows. */
const longestRow = 1 << 20;

/** Bytes taken at a time: with few rows in hand the collector of short-lived values has little to carry over. */
const atATime = 4096;

async function* cut(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  for await (const piece of bytes)
    for (let at = 0; at < piece.length; at += atATime) yield piece.subarray(at, at + atATime);
}

/** Pieces of a file, the first of which holds the whole header row. */
async function* withHeader(
  bytes: AsyncIterable<Uint8Array>,
): AsyncGenerator<{ readonly piece: Uint8Array; readonly header?: string }> {
  let head: Uint8Array | undefined = new Uint8Array();
  for await (const piece of cut(bytes)) {
    if (head === undefined) {
      yield { piece };
      continue;
    }
    head = Buffer.concat([head, piece]);
    const end = head.indexOf(10);
    if (end < 0 && head.length < longestRow) continue;
    yield { piece: head, header: Buffer.from(head.subarray(0, end < 0 ? undefined : end)).toString() };
    head = undefined;
  }
  if (head !== undefined && head.length > 0) yield { piece: head, header: Buffer.from(head).toString() };
}

function csvFault({ code }: CsvError, row: number): Fault {
  if (code === "CSV_QUOTE_NOT_CLOSED" || code === "CSV_MAX_RECORD_SIZE")
    return error(
      "csv-quote",
      [],
      `row ${row}: a quote is not closed, or the row is longer than ${longestRow / 1024} KiB; nothing after it was read`,
      "close the quote, or double it where it is part of the text",
    );
  return error("csv", [], `row ${row}: this is no CSV; nothing after it was read`);
}

/**
 * Rows of a CSV file, some at a time, as its pieces come in; blank rows are left out and still counted. Columns
 * are parted by a comma, a semicolon or a tab, whichever the header uses. Where the text stops being CSV,
 * `broken` hears why and no more rows come.
 */
export async function* readRows(
  bytes: AsyncIterable<Uint8Array>,
  broken: (fault: Fault) => void,
): AsyncGenerator<readonly CsvRow[]> {
  let parser: ReturnType<typeof parse> | undefined;
  let fault: CsvError | undefined;
  let row = 0;
  let rows: CsvRow[] = [];
  const take = (fields: readonly string[]): void => {
    row++;
    if (fields.some((cell) => cell.trim() !== "")) rows.push({ row, fields });
  };
  const taken = (): readonly CsvRow[] => {
    const all = rows;
    rows = [];
    return all;
  };
  const takeAll = (): void => {
    for (let fields = parser?.read(); fields; fields = parser?.read()) take(fields);
  };
  for await (const { piece, header } of withHeader(bytes)) {
    parser ??= parse({
      delimiter: sniffDelimiter(header ?? ""),
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      max_record_size: longestRow,
    }).on("error", (thrown: CsvError) => {
      fault = thrown;
    });
    const into = parser;
    // The parser holds a piece back until its rows are taken, so the two go hand in hand.
    const written = new Promise<unknown>((settle) => into.write(piece, settle));
    takeAll();
    await written;
    takeAll();
    yield taken();
    if (fault !== undefined) return broken(csvFault(fault, row + 1));
  }
  if (parser === undefined) return;
  const last = parser;
  const ended = new Promise<void>((settle) =>
    last
      .on("data", take)
      .once("end", settle)
      .once("error", () => settle()),
  );
  last.end();
  await ended;
  yield taken();
  if (fault !== undefined) broken(csvFault(fault, row + 1));
}
