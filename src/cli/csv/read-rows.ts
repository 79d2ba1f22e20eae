import { type CsvError, parse } from "csv-parse";
import { type CsvRow, csvFault, csvFormat, isBlank, longestRow, notText } from "../../core/csv/csv-format.js";
import { headerLine } from "../../core/csv/delimiter.js";
import type { Fault } from "../../core/fault.js";

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
    const text = Buffer.from(head).toString();
    const header = headerLine(text);
    if ((header === "" || text.endsWith(header)) && head.length < longestRow) continue;
    yield { piece: head, header };
    head = undefined;
  }
  if (head !== undefined && head.length > 0)
    yield { piece: head, header: headerLine(Buffer.from(head).toString()) };
}

/** Tells whether pieces of a file are text in UTF-8, one after the other. */
function textCheck(): (piece: Uint8Array) => boolean {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  return (piece) => {
    try {
      decoder.decode(piece, { stream: true });
      return !piece.includes(0);
    } catch {
      return false;
    }
  };
}

/**
 * Rows of a CSV file of any length, some at a time, as its pieces come in, in the way of `readCsv`; blank rows are left
 * out and still counted. Where the text stops being CSV, `broken` hears why and no more rows come.
 */
export async function* readRows(
  bytes: AsyncIterable<Uint8Array>,
  broken: (fault: Fault) => void,
): AsyncGenerator<readonly CsvRow[]> {
  let parser: ReturnType<typeof parse> | undefined;
  let fault: CsvError | undefined;
  let row = 0;
  let rows: CsvRow[] = [];
  const isText = textCheck();
  const take = (fields: readonly string[]): void => {
    row++;
    if (!isBlank(fields)) rows.push({ row, fields });
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
    if (!isText(piece)) return broken(notText());
    parser ??= parse(csvFormat(header ?? "")).on("error", (thrown: CsvError) => {
      fault = thrown;
    });
    const into = parser;
    // The parser holds a piece back until its rows are taken, so the two go hand in hand.
    const written = new Promise<unknown>((settle) => into.write(piece, settle));
    takeAll();
    await written;
    takeAll();
    yield taken();
    if (fault !== undefined) return broken(csvFault(fault.code, row + 1));
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
  if (fault !== undefined) broken(csvFault(fault.code, row + 1));
}
