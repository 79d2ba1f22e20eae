import { largestModel } from "../../batch-file/resources/model-reader.js";
import { error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import { measureMesh } from "../../core/part/measure.js";
import type { MeshMeasure } from "../../core/part/mesh-measure.js";
import { displacedCm3, wettedCm2 } from "../../core/part/wetted.js";
import { partInTank } from "../../core/plan/assign/part-in-tank.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import type { MeasuredFile } from "../../report/measure/measured-file.js";
import { measureReport } from "../../report/measure/report.js";
import { type Execute, refused, unplaced } from "../command.js";
import { readFault } from "../files/read-text.js";
import type { Io } from "../io.js";
import { readTank, type TankRead } from "./read-tank.js";
import { type MeasureTask, readTask } from "./read-task.js";

async function measureFile(file: string, task: MeasureTask, io: Io): Promise<Outcome<MeshMeasure>> {
  let bytes: Uint8Array;
  try {
    const atMost = largestModel + 1;
    bytes = await (file === "-" ? io.readStdin(atMost) : io.readFile(file, atMost));
  } catch (thrown) {
    return failed(readFault(file, thrown));
  }
  if (bytes.length > largestModel)
    return failed(error("mesh-too-large", [], "it is larger than 512 MiB", "export it with fewer triangles"));
  const { unit, densityGPerCm3 = defaults.part.densityGPerCm3 } = task;
  return measureMesh(bytes, { densityGPerCm3, ...(unit === undefined ? {} : { unit }) });
}

/** A wrong unit is mended by an option here. */
const inOptions = (fault: Fault): Fault =>
  fault.code === "mesh-unit" && fault.help !== undefined
    ? { ...fault, help: "give the unit that it is drawn in, such as --unit inch" }
    : fault;

/** What the tank makes of a part; a load size only where volume and mass mean something, drag-out where the area does. */
function inTank(model: MeshMeasure, { tank, handling }: NonNullable<TankRead["found"]>) {
  const part = { massG: model.massG, volumeCm3: displacedCm3(model), areaDm2: wettedCm2(model) / 100 };
  const found = partInTank(part, tank, handling);
  return {
    ...found,
    ...(model.volumeTrusted ? {} : { partsPerLoad: null, boundBy: null }),
    ...(model.coincident.doubledCm2 === 0 ? {} : { carriedOutMl: null }),
  };
}

/** Measures model files, one row each; a bad one does not keep the others. */
export const execute: Execute = async (request, io) => {
  const read = readTask(request);
  if (!read.ok) return refused(...read.faults);
  const task = read.value;
  const tank: TankRead =
    task.spec === undefined ? { diagnostics: [] } : await readTank(task.spec, task.tank, request, io);
  if (hasErrors(tank.diagnostics)) return { diagnostics: tank.diagnostics };
  const diagnostics: Diagnostic[] = [...tank.diagnostics];
  const files: MeasuredFile[] = [];
  for (const file of task.files) {
    const model = await measureFile(file, task, io);
    const faults = model.faults.map(inOptions);
    for (const fault of faults)
      diagnostics.push(unplaced(fault.code === "read" ? fault : { ...fault, path: [file] }));
    if (!model.ok) continue;
    files.push({
      file,
      model: model.value,
      warnings: faults,
      ...(tank.found === undefined ? {} : { inTank: inTank(model.value, tank.found) }),
    });
  }
  if (files.length === 0) return { diagnostics };
  const { densityGPerCm3 } = task;
  return {
    diagnostics,
    report: measureReport(files, {
      densityGPerCm3: densityGPerCm3 ?? defaults.part.densityGPerCm3,
      densityAssumed: densityGPerCm3 === undefined,
    }),
    ...(hasErrors(diagnostics) ? { status: 2 as const } : {}),
  };
};
