import { readCsv } from "../../core/csv/read-csv.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import { newStyle } from "../read/log-style.js";
import { readLog } from "../read/read-log.js";
import { headerText } from "./write-row.js";

const [lineFeed, carriageReturn] = [0x0a, 0x0d];

const decode = (bytes: Uint8Array): string => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

/** A log as its bytes are, parted behind its last line end. */
export interface LogTail {
  /** The text that can be read: without the tail where that was cut off. */
  readonly text: string;
  /** What follows the last line end; empty where the file ends with one. */
  readonly tail: Uint8Array;
  /** The tail was cut off while it was written. */
  readonly torn: boolean;
}

/** Whether one line is a row under a header that can be read. */
export const isWholeRow = (header: string, line: string): boolean => {
  const { log, diagnostics } = readLog("", `${header}\n${line}\n`);
  return log !== undefined && !hasErrors(diagnostics);
};

/**
 * Whether the last row of a log has every cell. One that was cut off in its last cell has; its writer never heard that
 * it was written.
 */
const hasEveryCell = (text: string, columns: number): boolean => {
  const whole = readCsv(text);
  return whole.ok && (whole.value.rows.at(-1)?.fields.length ?? 0) >= columns;
};

/**
 * Whether a text is the beginning of the first line that we write, too short for a header: any other file is not ours to
 * mend.
 */
const isCutHeader = (text: string): boolean =>
  [",", ";"].some((delimiter) => {
    const whole = headerText({ ...newStyle, delimiter });
    return whole.startsWith(text.replace(/^\ufeff/, ""));
  }) && readLog("", text).log === undefined;

/** Looks at the end of a log: a last line without its end was typed so, or a crash cut it off. */
export function logTail(bytes: Uint8Array): LogTail {
  const end = Math.max(bytes.lastIndexOf(lineFeed), bytes.lastIndexOf(carriageReturn)) + 1;
  const tail = bytes.subarray(end);
  const text = decode(bytes);
  if (tail.length === 0) return { text, tail, torn: false };
  const before = decode(bytes.subarray(0, end));
  const head = readCsv(before);
  // Inside quotes a line end is part of a cell: such a tail is no row of its own.
  if (!head.ok) return { text, tail, torn: false };
  const { header } = head.value;
  if (header === undefined) {
    const torn = isCutHeader(decode(tail));
    return { text: torn ? before : text, tail, torn };
  }
  const whole = hasEveryCell(text, header.fields.length);
  return { text: whole ? text : before, tail, torn: !whole };
}
