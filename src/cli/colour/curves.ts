import { append } from "../../core/append.js";
import { spectrumReport } from "../../core/colour/colour-report.js";
import { type ReflectanceReader, readReflectance } from "../../core/colour/csv/reflectance-csv.js";
import { error, type Fault, isError } from "../../core/fault.js";
import type { Reading } from "../../core/model/colour.js";
import { type CurveReport, curvesReport } from "../../report/colour/curves.js";
import { type Result, unplaced } from "../command.js";
import { type CsvRow, readRows } from "../csv/read-rows.js";
import { decimalShown } from "../csv/sniff.js";
import { readFault } from "../files/read-text.js";
import type { Io } from "../io.js";

/** Rows go to the reader once a number has shown the decimal sign; until then they wait. */
function feeder(header: readonly string[], faults: Fault[]) {
  const waiting: CsvRow[] = [];
  let reader: ReflectanceReader | undefined;
  let refused = false;
  const open = (decimal: "point" | "comma"): void => {
    const opened = readReflectance(header, decimal);
    append(faults, opened.faults);
    if (opened.ok) reader = opened.value;
    else refused = true;
    for (const { fields, row } of waiting.splice(0)) reader?.take(fields, row);
  };
  return {
    take: (line: CsvRow): void => {
      if (refused) return;
      if (reader !== undefined) {
        reader.take(line.fields, line.row);
        return;
      }
      waiting.push(line);
      const decimal = line.fields.map(decimalShown).find((sign) => sign !== undefined);
      if (decimal !== undefined) open(decimal);
    },
    end: () => {
      if (reader === undefined && !refused) open("point");
      return reader?.end();
    },
  };
}

async function readCurves(path: string, io: Io) {
  const faults: Fault[] = [];
  let feed: ReturnType<typeof feeder> | undefined;
  try {
    for await (const rows of readRows(io.read(path), (fault) => faults.push(fault)))
      for (const row of rows)
        if (feed === undefined) feed = feeder(row.fields, faults);
        else feed.take(row);
  } catch (thrown) {
    return { samples: [], faults: [readFault(path, thrown)] };
  }
  if (feed === undefined && faults.length === 0)
    faults.push(
      error(
        "reflectance-empty",
        [],
        "there is no header row",
        "the first row names wavelength_nm and each sample",
      ),
    );
  const read = feed?.end();
  return { samples: read?.samples ?? [], faults: [...faults, ...(read?.faults ?? [])] };
}

/** Reports every curve of a file ("-" for stdin), one row a sample. */
export async function reportCurves(file: string, reading: Reading, io: Io): Promise<Result> {
  const { samples, faults } = await readCurves(file, io);
  const placed = (fault: Fault): Fault => ({ ...fault, path: fault.code === "read" ? [] : [file] });
  const found: Fault[] = faults.map(placed);
  const curves: CurveReport[] = [];
  for (const { name, spectrum } of samples) {
    const report = spectrumReport(spectrum, reading);
    for (const fault of report.faults) found.push({ ...fault, path: [file, name] });
    if (report.ok) curves.push({ name, ...report.value });
  }
  const diagnostics = found.map(unplaced);
  if (curves.length === 0) return { diagnostics };
  return {
    diagnostics,
    report: curvesReport(curves, reading),
    ...(found.some(isError) ? { status: 2 } : {}),
  };
}
