import type { CsvRow } from "../../core/csv/csv-format.js";
import { type CsvHeader, noHeader } from "../../core/csv/csv-header.js";
import type { DecimalMark } from "../../core/csv/csv-number.js";
import { type CsvText, readCsv } from "../../core/csv/read-csv.js";
import type { Fault } from "../../core/fault.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { type Locate, toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { checkRow } from "../row/check-row.js";
import { type ColumnName, columnNames } from "../row/columns.js";
import { inspectLoads } from "../row/inspect-loads.js";
import type { LogRow } from "../row/log-row.js";
import { settleMinutes } from "../row/settle-minutes.js";
import { writtenTwice } from "./again-warnings.js";
import { inRow } from "./in-row.js";
import { decimalMarks } from "./log-numbers.js";
import { type LogStyle, styleOf } from "./log-style.js";
import { lotsWithoutZeros } from "./lot-warnings.js";
import { goingBack, notDone } from "./order-warnings.js";
import { readCells, shapeFault } from "./read-cells.js";
import { readHeader } from "./read-header.js";

/** A log whose header could be read. */
export interface BathLog {
  /** What happened, by time; ties in the order of the file. Readings are in the load that they belong to. */
  readonly rows: readonly LogRow[];
  /** Rows without a time: planned, not done. */
  readonly unconfirmed: readonly number[];
  readonly style: LogStyle;
}

export interface LogRead {
  /** With errors among the diagnostics: without the rows that are wrong. */
  readonly log?: BathLog;
  readonly diagnostics: readonly Diagnostic[];
  /** The place in the file of a fault whose path is `inRow`'s. */
  readonly locate: Locate;
}

/** How to mend a fault of a row in its file. */
const helped = (fault: Fault, { at }: CsvHeader): Fault => {
  if (fault.code !== "log-needs") return fault;
  const [column] = fault.path as [ColumnName];
  return {
    ...fault,
    help: at(column) === undefined ? `add a column ${column} to the first row` : "fill it in",
  };
};

interface Rows {
  readonly found: readonly LogRow[];
  readonly unconfirmed: readonly number[];
  readonly faults: readonly Fault[];
}

function readRows(
  rows: readonly CsvRow[],
  header: CsvHeader,
  style: LogStyle,
  marks: readonly DecimalMark[],
): Rows {
  const found: LogRow[] = [];
  const unconfirmed: number[] = [];
  const faults: Fault[] = [];
  for (const csvRow of rows) {
    const { row, fields } = csvRow;
    // Two logs one behind the other, or two writers that began one at the same moment.
    if (header.names.every((name, i) => name === fields[i]?.trim())) continue;
    const shape = shapeFault(csvRow, header);
    if (shape !== undefined) {
      faults.push(shape);
      continue;
    }
    const cells = readCells(csvRow, header, style, marks);
    faults.push(...cells.faults);
    if (cells.faults.length > 0) continue;
    if (cells.values.time === undefined) {
      unconfirmed.push(row);
      continue;
    }
    const checked = checkRow(cells.values);
    faults.push(...checked.faults.map((fault) => inRow(row, String(fault.path[0]), helped(fault, header))));
    if (checked.ok) found.push({ ...checked.value, row });
  }
  return { found: settleMinutes(found), unconfirmed, faults };
}

interface Found {
  readonly log?: BathLog;
  readonly header?: CsvHeader;
  readonly faults: readonly Fault[];
}

function logOf(text: string, { header: first, rows }: CsvText): Found {
  if (first === undefined) return { faults: [noHeader(columnNames.join())] };
  const named = readHeader(first);
  if (!named.ok) return { faults: named.faults };
  const header = named.value;
  const marks = decimalMarks(rows, header);
  const style = styleOf(text, header.names, marks[0]);
  const { found, unconfirmed, faults } = readRows(rows, header, style, marks);
  const inOrder = [...found].sort((one, other) => one.time.seconds - other.time.seconds);
  const { rows: joined, faults: late } = inspectLoads(inOrder);
  const all = [
    ...faults,
    ...late.map(({ row, fault }) => inRow(row.row!, String(fault.path[0]), fault)),
    ...goingBack(found),
    ...writtenTwice(found),
    ...lotsWithoutZeros(found),
    ...notDone(unconfirmed),
  ];
  return {
    header,
    log: { rows: joined, unconfirmed, style },
    faults: all.sort((one, other) => Number(one.path[1]) - Number(other.path[1])),
  };
}

/**
 * Reads the text of a log: every row checked, every fault placed in the file and said with what to write instead.
 * @param name of the file, for its diagnostics
 * @example
 * readLog("baths.csv", "time,bath,event,dye\n2027-04-16T08:40,six,made-up,brick\n").log.rows[0].event // => "made-up"
 * readLog("baths.csv", "time;bath;event;celsius\n16.04.2027 09:30;six;measured;79,5\n").log.rows[0].celsius // => 79.5
 * readLog("baths.csv", "time,bath,event\n2027-04-16T08:40,six,made-up\n").diagnostics[0].code // => "log-needs"
 */
export function readLog(name: string, text: string): LogRead {
  const csv = readCsv(text);
  if (!csv.ok) {
    const locate = () => undefined;
    return { diagnostics: csv.faults.map((fault) => toDiagnostic(fault, locate)), locate };
  }
  const { log, faults, header } = logOf(text, csv.value);
  const locate: Locate = ([, row, column]) => {
    if (typeof row !== "number") return undefined;
    return {
      file: name,
      ...csv.value.place(row, typeof column === "string" ? header?.at(column) : undefined),
    };
  };
  return {
    ...(log === undefined ? {} : { log }),
    diagnostics: faults.map((fault) => toDiagnostic(fault, locate)),
    locate,
  };
}
