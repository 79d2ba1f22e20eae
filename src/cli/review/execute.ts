import { nearest } from "../../batch-file/issues/nearest.js";
import { besides } from "../../batch-file/source/include.js";
import { error, type Fault, isError } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { readLog } from "../../log/read/read-log.js";
import { reviewLog } from "../../log/review/review.js";
import { traceLoads } from "../../log/review/trace.js";
import { reviewReport } from "../../report/review/report.js";
import { traceReport } from "../../report/review/trace-report.js";
import { namesInWords } from "../batch/names-in-words.js";
import { readBatchFile, workshopOf } from "../batch/read.js";
import { type Execute, refused, unplaced } from "../command.js";
import { readNamed } from "../files/read-text.js";

/** Longest log that is read [bytes]. */
const largest = 16 * 1024 * 1024;

/** The fault of a name that no load of the log has. */
function notLogged(what: "part" | "lot", name: string | undefined, logged: readonly string[]): Fault[] {
  if (name === undefined || logged.includes(name)) return [];
  const known = [...new Set(logged)];
  const near = nearest(name, known);
  const has = known.length === 0 ? `no load in it has a ${what}` : `it has ${namesInWords(known)}`;
  return [
    error(
      `log-unknown-${what}`,
      [`--${what}`],
      `the log has no ${what} "${name}"`,
      near === undefined ? has : `did you mean ${near}?`,
    ),
  ];
}

/** What the log of a batch teaches, or the loads of a part or lot in it. */
export const execute: Execute = async (request, io) => {
  const spec = request.args[0] ?? "-";
  const option = (name: string): string | undefined => request.options[name] as string | undefined;
  const workshop = workshopOf(io);
  // The log says how its baths start.
  const read = await readBatchFile(spec, request, io, { needs: ["baths"], workshop, startsMatter: false });
  if (read.batch === undefined || read.spec === undefined) return { diagnostics: read.diagnostics };
  const named = read.spec.log;
  const file =
    option("log") ?? (named === undefined ? undefined : besides(read.locate(["log"])!.file, named));
  if (file === undefined)
    return refused(
      error("log-missing", [], "no log is given", "add --log baths.csv, or log: baths.csv to the batch file"),
    );
  const text = await readNamed(file, io, largest + 1);
  if (!text.ok) return { diagnostics: text.faults.map(unplaced) };
  if (text.value.length > largest)
    return refused(error("too-large", [], `${file} is larger than 16 MiB`, "begin a new log"));
  const { log, diagnostics: found, locate } = readLog(file, text.value);
  const diagnostics = [...read.diagnostics, ...found];
  if (log === undefined || hasErrors(found)) return { diagnostics };
  const [part, lot] = [option("part"), option("lot")];
  if (part !== undefined || lot !== undefined) {
    const loads = traceLoads(log.rows, {});
    const unknown = [
      ...notLogged(
        "part",
        part,
        mapped(loads, (load) => load.part),
      ),
      ...notLogged(
        "lot",
        lot,
        loads.flatMap(({ powderLot, dyeLot }) => [powderLot, dyeLot].filter((one) => one !== null)),
      ),
    ];
    if (unknown.length > 0) return { diagnostics: [...diagnostics, ...unknown.map(unplaced)] };
    const of = [part, lot].filter((one) => one !== undefined).join(", lot ");
    return {
      report: traceReport(part === undefined ? `lot ${lot}` : of, traceLoads(log.rows, { part, lot })),
      diagnostics,
    };
  }
  const reviewed = reviewLog(read.batch, log.rows, workshop.work);
  const faults = reviewed.faults.map((fault) =>
    fault.path[0] === "row" ? toDiagnostic(fault, locate) : toDiagnostic(fault, read.locate),
  );
  const all = [...diagnostics, ...faults];
  return reviewed.ok && !all.some(isError)
    ? { report: reviewReport(reviewed.value), diagnostics: all }
    : { diagnostics: all };
};
