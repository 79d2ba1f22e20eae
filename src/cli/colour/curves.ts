import { append } from "../../core/append.js";
import { spectrumReport } from "../../core/colour/colour-report.js";
import { type ReflectanceReader, readReflectance } from "../../core/colour/csv/reflectance-csv.js";
import type { CsvRow } from "../../core/csv/csv-format.js";
import { csvHeader, noHeader } from "../../core/csv/csv-header.js";
import { csvNumbers } from "../../core/csv/csv-number.js";
import { type Fault, isError } from "../../core/fault.js";
import type { Reading } from "../../core/model/colour.js";
import { type CurveReport, curvesReport } from "../../report/colour/curves.js";
import { type Result, unplaced } from "../command.js";
import { readRows } from "../csv/read-rows.js";
import { readFault } from "../files/read-text.js";
import type { Io } from "../io.js";

async function readCurves(path: string, io: Io) {
  const faults: Fault[] = [];
  let reader: ReflectanceReader | undefined;
  let headed = false;
  const open = (head: CsvRow): void => {
    headed = true;
    const header = csvHeader(head);
    append(faults, header.faults);
    if (!header.ok) return;
    const opened = readReflectance(header.value, csvNumbers());
    append(faults, opened.faults);
    if (opened.ok) reader = opened.value;
  };
  try {
    for await (const rows of readRows(io.read(path), (fault) => faults.push(fault)))
      for (const row of rows)
        if (!headed) open(row);
        else reader?.take(row);
  } catch (thrown) {
    return { samples: [], faults: [readFault(path, thrown)] };
  }
  if (!headed && faults.length === 0) faults.push(noHeader("wavelength_nm,coral"));
  const read = reader?.end();
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
