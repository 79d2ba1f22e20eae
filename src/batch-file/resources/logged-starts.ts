import { error } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import type { SharedWork } from "../../core/plan/run/shared-work.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { type Locate, toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { readLog } from "../../log/read/read-log.js";
import { startFromLog } from "../../log/replay/start-from-log.js";
import type { LogRow } from "../../log/row/log-row.js";
import { because, type ReadFile } from "../source/include.js";
import { largest } from "../source/read-source.js";
import type { Path } from "../source/source.js";
import type { Spec, SpecStart } from "../to-batch/complete.js";
import { toBatch } from "../to-batch/to-batch.js";

/** Where the log of a batch is. */
export interface LogFile {
  /** Absent: nobody named one. */
  readonly file: string | undefined;
  readonly readFile: ReadFile;
  readonly asDayBegan?: boolean | undefined;
}

/**
 * The rows of a log before a bath's work on the day of a batch, if that day is its last: those of the days before, and up
 * to its making up where that was on the same day.
 */
function asTheDayBegan(rows: readonly LogRow[], bath: string, date: string | undefined): readonly LogRow[] {
  const ofDay = ({ time }: LogRow): boolean => time.text.slice(0, "2027-04-16".length) === date;
  const last = rows.findLast((row) => row.bath === bath);
  if (last === undefined || !ofDay(last)) return rows;
  const madeUp = rows.findLastIndex((row) => row.bath === bath && row.event === "made-up");
  return rows.filter((row, i) => !ofDay(row) || i <= madeUp);
}

/** Replaces every `start: log` by what the log finds in its tank. */
export async function loggedStarts(
  spec: Spec,
  { file, readFile, asDayBegan }: LogFile,
  shared: SharedWork,
  locate: Locate,
): Promise<{ readonly spec: Spec; readonly diagnostics: readonly Diagnostic[] }> {
  const logged = spec.baths.flatMap(({ start }, i) => (start.kind === "log" ? [i] : []));
  const at = (path: Path, code: string, message: string, help: string) => ({
    spec,
    diagnostics: [toDiagnostic(error(code, path, message, help), locate)],
  });
  if (file === undefined)
    return at(
      ["baths", logged[0]!, "start"],
      "log-missing",
      "a bath starts from the log, but no log is given",
      "add log: baths.csv at the top of the batch file, or --log baths.csv",
    );
  let text: string;
  try {
    text = await readFile(file);
  } catch (cause) {
    return at(
      spec.log === undefined ? [] : ["log"],
      "log-unreadable",
      `the log ${file} cannot be read: ${because(cause)}`,
      "dipwright record begins a log, and start: fresh needs none; the name is relative to the batch file that holds it",
    );
  }
  if (text.length > largest)
    return at([], "too-large", `the log ${file} is larger than 4 MiB`, "begin a new log");
  const { log, diagnostics: found, locate: inLog } = readLog(file, text);
  const diagnostics: Diagnostic[] = [...found];
  if (log === undefined || diagnostics.some(({ severity }) => severity === "error"))
    return { spec, diagnostics };
  const batch = toBatch(spec);
  const baths = mapped(spec.baths, (bath, i) => {
    if (bath.start.kind !== "log") return bath;
    const rows = asDayBegan === true ? asTheDayBegan(log.rows, bath.tank, spec.date) : log.rows;
    const start = startFromLog(batch, batch.baths[i]!, rows, shared);
    for (const fault of start.faults) {
      const placed = fault.path[0] === "row" || fault.path[0] === "dyes";
      const path = placed ? fault.path : ["baths", i, "start"];
      diagnostics.push(toDiagnostic({ ...fault, path }, fault.path[0] === "row" ? inLog : locate));
    }
    if (!start.ok) return bath;
    const { volumeL, strength, ageDays, areaDm2, row, time } = start.value;
    const kept: SpecStart = {
      kind: "kept",
      volume: { value: volumeL },
      coldVolume: undefined,
      strength: { value: strength },
      age: { value: ageDays },
      area: { value: areaDm2 },
      log: { file, row, time },
    };
    return { ...bath, start: kept };
  });
  return { spec: { ...spec, baths }, diagnostics };
}
