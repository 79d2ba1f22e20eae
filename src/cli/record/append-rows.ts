import { done, error, failed, isError, type Outcome } from "../../core/fault.js";
import { isWholeRow } from "../../log/append/log-tail.js";
import { headerText, rowText } from "../../log/append/write-row.js";
import type { LogStyle } from "../../log/read/log-style.js";
import { columnNames } from "../../log/row/columns.js";
import { inspects, loadBefore } from "../../log/row/inspect-loads.js";
import type { LogRow } from "../../log/row/log-row.js";
import type { LogValues } from "../../log/row/log-values.js";
import { settleMinutes } from "../../log/row/settle-minutes.js";
import { recordReport } from "../../report/record/report.js";
import { type Request, type Result, refused, unplaced } from "../command.js";
import { writeFault } from "../files/write-fault.js";
import type { Appended, Io } from "../io.js";
import { usage } from "../usage.js";
import { openElsewhere, tornRows } from "./log-warnings.js";
import { type OpenLog, openLog } from "./open-log.js";
import { alreadyPlanned, amongOthers, cellsFor, recordedAgain, withoutColumn } from "./row-faults.js";

/** A row to append; one that is planned and not done has cells only. */
export interface NewRow {
  readonly values: LogValues;
  /** Those of the cells that a plan filled in: a log that has no column for one does without it. */
  readonly planned?: LogValues;
  readonly row?: LogRow;
}

/** How often the log is read again because others wrote to it meanwhile. */
const mostTries = 20;

/** How a row is written: in the way of the log, or in the way that is wanted of a new one. */
function styleFor(log: OpenLog, { options, output }: Request): Outcome<LogStyle> {
  const given = ["delimiter", "decimal", "bom"].find((name) => options[name] !== undefined);
  if (!log.empty)
    return given === undefined
      ? done(log.style)
      : failed(usage(`--${given}`, "the log keeps the form that it has", `leave out --${given}`));
  const { delimiter, decimal } = output.csv;
  if (![",", ";", "\t"].includes(delimiter))
    return failed(
      usage("--delimiter", "a log has , or ; or a tab between its columns", "write one of these"),
    );
  return done({ ...log.style, delimiter, decimal: decimal === "," ? "comma" : "point" });
}

const reported = (path: string, rows: readonly NewRow[], before: readonly LogRow[]) => {
  const [only] = rows;
  const load = only?.row !== undefined && inspects(only.row) ? loadBefore(before, only.row) : undefined;
  return recordReport({
    log: path,
    columns: columnNames,
    rows: rows.map(({ values: { time, ...others } }) => ({ ...(time && { time: time.text }), ...others })),
    load: load && {
      time: load.time.text,
      part: load.part,
      ...(load.shade === undefined ? {} : { shade: load.shade }),
    },
  });
};

/** A row with the second of a load or row that its time names by the minute. */
function settled(one: NewRow, before: readonly LogRow[]): NewRow {
  if (one.row === undefined) return one;
  const row = settleMinutes([...before, one.row]).at(-1)!;
  return { ...one, row, values: { ...one.values, time: row.time } };
}

/** One try: "changed" where others wrote between reading and writing. */
async function tryAppend(
  path: string,
  given: readonly NewRow[],
  request: Request,
  io: Io,
): Promise<Result | "changed"> {
  const log = await openLog(path, io);
  if (log.style === undefined) return { diagnostics: log.diagnostics };
  const styled = styleFor(log, request);
  if (!styled.ok) return refused(...styled.faults);
  const style = styled.value;
  const rows = given.map((row) => settled(row, log.rows));
  const cells = rows.map((row) => cellsFor(row, style));
  const faults = [
    ...withoutColumn(cells, style),
    ...rows.flatMap(({ row, planned }) =>
      row === undefined
        ? []
        : [...amongOthers(row, log.rows), ...recordedAgain(row, planned?.note, log.rows)],
    ),
    ...(rows.some(({ row }) => row === undefined) ? alreadyPlanned(log.unconfirmed) : []),
  ];
  if (faults.some(isError)) return refused(...faults);
  const header = headerText(style);
  const bom = log.isNew && request.output.csv.bom ? "\ufeff" : "";
  const lines = [...(log.empty ? [bom + header] : []), ...cells.map((values) => rowText(values, style))];
  let appended: Appended | "changed";
  try {
    appended = await io.appendLines(path, {
      text: lines.map((line) => line + style.lineEnd).join(""),
      lineEnd: style.lineEnd,
      isNew: log.isNew,
      tail: log.tail,
      torn: log.torn,
      isWhole: (line) => isWholeRow(header, line),
    });
  } catch (thrown) {
    return refused(writeFault(path, thrown));
  }
  if (appended === "changed") return appended;
  const said = [...faults, ...openElsewhere(path, io), ...tornRows(path, appended)];
  return {
    diagnostics: [...log.diagnostics, ...said.map(unplaced)],
    report: reported(path, rows, log.rows),
  };
}

/** Appends rows to a log in one piece. */
export async function appendRows(
  path: string,
  rows: readonly NewRow[],
  request: Request,
  io: Io,
): Promise<Result> {
  for (let tries = 0; tries < mostTries; tries++) {
    const result = await tryAppend(path, rows, request, io);
    if (result !== "changed") return result;
  }
  return refused(error("log-busy", [], `other programs write to ${path} all the time`, "try again"));
}
