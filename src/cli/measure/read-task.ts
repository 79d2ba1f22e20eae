import { modelUnit, modelUnitNames } from "../../batch-file/resources/model-units.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import type { MeshUnit } from "../../core/part/units.js";
import { listed } from "../../core/quantity/text/listed.js";
import type { Request } from "../command.js";
import { optionReader } from "../option-reader.js";
import { usage } from "../usage.js";

/** What is asked of `measure`. */
export interface MeasureTask {
  readonly files: readonly string[];
  readonly unit?: MeshUnit;
  readonly densityGPerCm3?: number;
  readonly spec?: string;
  readonly tank?: string;
}

/** Reads arguments and options of `measure`; every fault of them at once. */
export function readTask({ args, options, output }: Request): Outcome<MeasureTask> {
  const text = (name: string): string | undefined => options[name] as string | undefined;
  const read = optionReader(text);
  const densityGPerCm3 = read.quantity("density", "density", {
    above: 0,
    must: `write a density above 0, such as ${defaults.part.densityGPerCm3} g/cm3`,
  });
  const [typedUnit, spec, tank] = [text("unit"), text("spec"), text("tank")];
  const unit = modelUnit(typedUnit ?? "");
  const faults: Fault[] = [...read.faults];
  if (typedUnit !== undefined && unit === undefined)
    faults.push(
      usage("--unit", `"${typedUnit}" is not a unit of a model`, `write ${listed(modelUnitNames)}`),
    );
  if (tank !== undefined && spec === undefined)
    faults.push(usage("--tank", "a tank is looked up in a batch file", "add --spec FILE"));
  if (spec === undefined && output.set.length > 0)
    faults.push(usage("--set", "no batch file is read, so there is nothing to set", "add --spec FILE"));
  if ([...args, ...(spec === undefined ? [] : [spec])].filter((name) => name === "-").length > 1)
    faults.push(error("usage", [], "stdin can be read once only", "write - once"));
  if (faults.length > 0) return failed(...faults);
  return done({
    files: args,
    ...(unit === undefined ? {} : { unit }),
    ...(densityGPerCm3 === undefined ? {} : { densityGPerCm3 }),
    ...(spec === undefined ? {} : { spec }),
    ...(tank === undefined ? {} : { tank }),
  });
}
