import { nearest } from "../../batch-file/issues/nearest.js";
import { type CsvText, readCsv } from "../../core/csv/read-csv.js";
import { error, type Fault } from "../../core/fault.js";
import type { LawName } from "../../core/model/batch.js";
import { counted } from "../../core/quantity/text/counted.js";
import { listed } from "../../core/quantity/text/listed.js";
import { fitUptake } from "../../core/uptake/fit/fit-uptake.js";
import { columnMeaning } from "../../core/uptake/fit/table-columns.js";
import { readUptakeTable } from "../../core/uptake/fit/uptake-table.js";
import { type Locate, toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { fitReport } from "../../report/fit/report.js";
import { type Execute, type Result, refused, unplaced } from "../command.js";
import { mostShown } from "../csv/most-shown.js";
import { readNamed } from "../files/read-text.js";

/** Longest file read [bytes]: some hundred thousand readings. */
const largest = 4 * 1024 * 1024;

/** Where the core leaves the way out to whoever asks, as an option of this command. */
const helpHere: Readonly<Record<string, string>> = {
  "table-uptake-column": "name the column of readings uptake, ks or exhaustion, or say --column NAME",
};

function inThisCommand(fault: Fault): Fault {
  const help = helpHere[fault.code];
  return help === undefined ? fault : { ...fault, help };
}

function wrongColumn(wanted: string, header: readonly string[]): Fault | undefined {
  const names = header.map((cell) => cell.trim()).filter((cell) => cell !== "");
  const readings = names.filter((name) => !columnMeaning(name).kind.startsWith("time"));
  if (readings.includes(wanted)) return undefined;
  const near = nearest(wanted, readings);
  const what = names.includes(wanted) ? "is the time" : "is not a column of the file";
  return error(
    "table-uptake-column",
    ["--column"],
    `"${wanted}" ${what}`,
    near === undefined ? `it has ${listed(readings, "and")}` : `did you mean ${near}?`,
  );
}

/** Fits the uptake laws to a table of readings. */
export const execute: Execute = async ({ args, options, output }, io): Promise<Result> => {
  const [name = ""] = args;
  const law = options.law as LawName | undefined;
  const column = options.column as string | undefined;
  if (output.set.length > 0)
    return refused(error("usage", ["--set"], "fit reads no batch file, so there is nothing to set"));
  const text = await readNamed(name, io, largest + 1);
  if (!text.ok) return refused(...text.faults);
  if (new TextEncoder().encode(text.value).length > largest)
    return refused(error("too-large", [], `${name} is larger than 4 MiB`, "thin out the readings"));
  const csv = readCsv(text.value);
  if (!csv.ok) return refused(...csv.faults.map((fault) => ({ ...fault, path: [name] })));
  const { header } = csv.value;
  const locate = locateIn(name, csv.value);
  const told = (faults: readonly Fault[]) => faults.map((fault) => diagnosed(inThisCommand(fault), locate));
  const wrong = column === undefined ? undefined : wrongColumn(column, header?.fields ?? []);
  if (wrong !== undefined) return refused(wrong);
  const table = readUptakeTable(csv.value, column);
  if (!table.ok) return { diagnostics: told(fewOf(table.faults)) };
  const fits = fitUptake(table.value.points, law);
  const diagnostics = told([...table.faults, ...fits.faults]);
  if (!fits.ok) return { diagnostics };
  return {
    report: fitReport({ name, table: table.value, fits: fits.value, warnings: diagnostics }),
    diagnostics,
  };
};

/** Faults that are shown, and how many are not. */
function fewOf(faults: readonly Fault[]): readonly Fault[] {
  const more = faults.length - mostShown;
  if (more <= 0) return faults;
  const said = `${counted(more, "more fault")} ${more === 1 ? "is" : "are"} not shown`;
  return [...faults.slice(0, mostShown), error("table-more", [], said)];
}

/** The place of `["row", number]` or `["row", number, column name]` in a file. */
const locateIn =
  (file: string, { header, place }: CsvText): Locate =>
  ([, row, column]) => ({
    file,
    ...place(
      Number(row),
      column === undefined ? undefined : (header?.fields ?? []).findIndex((cell) => cell.trim() === column),
    ),
  });

const diagnosed = (fault: Fault, locate: Locate) =>
  fault.path[0] === "row" ? toDiagnostic(fault, locate) : unplaced(fault);
