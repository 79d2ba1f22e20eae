import { done, error, failed, isError, type Outcome } from "../../core/fault.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { logTail } from "../../log/append/log-tail.js";
import { type LogStyle, newStyle } from "../../log/read/log-style.js";
import { readLog } from "../../log/read/read-log.js";
import type { LogRow } from "../../log/row/log-row.js";
import { readFault } from "../files/read-text.js";
import type { Io } from "../io.js";

/** Longest log that is read [bytes]: some 100,000 rows. */
const largest = 16 * 1024 * 1024;
/** Rows of the log with faults that are shown; recording goes on in spite of them. */
const mostShown = 3;

/** A log as it is before a row is appended. */
export interface OpenLog {
  readonly style: LogStyle;
  readonly rows: readonly LogRow[];
  /** Rows without a time. */
  readonly unconfirmed: readonly number[];
  /** Nothing is in it yet, so that the names of the columns come first. */
  readonly empty: boolean;
  readonly isNew: boolean;
  readonly tail: Uint8Array;
  readonly torn: boolean;
  /** What is wrong in it. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Why a log cannot be appended to. */
export interface ClosedLog {
  readonly style?: undefined;
  readonly diagnostics: readonly Diagnostic[];
}

async function bytesOf(path: string, io: Io): Promise<Outcome<Uint8Array | undefined>> {
  try {
    const bytes = await io.readFile(path, largest + 1);
    return bytes.length > largest
      ? failed(error("too-large", [], `${path} is larger than 16 MiB`, "begin a new log"))
      : done(bytes);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException | null)?.code === "ENOENT") return done(undefined);
    return failed(readFault(path, thrown));
  }
}

/** A fault of the log that does not keep a row from being appended. */
const asWarning = (diagnostic: Diagnostic): Diagnostic => ({ ...diagnostic, severity: "warning" });

/** Reads a log before a row is appended to it; where there is none, it is begun in the style that is wanted. */
export async function openLog(path: string, io: Io): Promise<OpenLog | ClosedLog> {
  const read = await bytesOf(path, io);
  if (!read.ok) return { diagnostics: read.faults.map((fault) => ({ ...fault, spans: [] })) };
  const bytes = read.value ?? new Uint8Array();
  const { text, tail, torn } = logTail(bytes);
  const end = { tail, torn, isNew: bytes.length === 0 };
  if (text.trim() === "")
    return { ...end, style: newStyle, rows: [], unconfirmed: [], empty: true, diagnostics: [] };
  const { log, diagnostics } = readLog(path, text);
  if (log === undefined) return { diagnostics };
  return {
    ...end,
    style: log.style,
    rows: log.rows,
    unconfirmed: log.unconfirmed,
    empty: false,
    diagnostics: diagnostics.filter(isError).slice(0, mostShown).map(asWarning),
  };
}
