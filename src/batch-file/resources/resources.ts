import type { Fault, Outcome } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import type { BathStart, Colour } from "../../core/model/batch.js";
import type { Path } from "../source/source.js";
import type { Spec } from "../to-batch/complete.js";
import type { ReadModel } from "./model-reader.js";
import { partOfModel } from "./part-of-model.js";

/** State of a bath as its log leaves it. */
export type LoggedStart = Extract<BathStart, { kind: "kept" }>;

/** Readers of what a batch file points at, each given by whoever runs the command. Faults carry no path. */
export interface Readers {
  /** A model file, named as seen from where the command runs. */
  readonly measure?: ReadModel;
  /** A file of one reflectance curve, named likewise. */
  readonly reflectance?: (file: string) => Promise<Outcome<Extract<Colour, { kind: "reflectance" }>>>;
  /** The bath log. */
  readonly startFromLog?: (bath: {
    index: number;
    tank: string;
    dye: string;
  }) => Promise<Outcome<LoggedStart>>;
}

/**
 * Fills in what meshes, reflectance files and the bath log say; the spec must point at none that no reader is given for. `beside` names a file as seen from the place of a path.
 */
export async function withResources(
  spec: Spec,
  readers: Readers,
  beside: (path: Path, name: string) => string,
): Promise<{ spec: Spec; faults: readonly Fault[] }> {
  const faults: Fault[] = [];
  const from = <T>(outcome: Outcome<T>, path: Path): T | undefined => {
    faults.push(...mapped(outcome.faults, (fault) => ({ ...fault, path })));
    return outcome.ok ? outcome.value : undefined;
  };

  const parts = { ...spec.parts };
  for (const [name, part] of Object.entries(spec.parts)) {
    if (part.mesh === undefined || readers.measure === undefined) continue;
    const file = beside(["parts", name, "mesh"], part.mesh.file);
    const measured = partOfModel(name, part, file, await readers.measure(file, part.mesh.unit));
    faults.push(...measured.faults);
    parts[name] = measured.part;
  }

  const dyes = { ...spec.dyes };
  for (const [name, dye] of Object.entries(spec.dyes)) {
    if (dye.swatches.every(({ colour }) => colour.kind !== "file")) continue;
    const swatches = [...dye.swatches];
    for (const [i, swatch] of dye.swatches.entries()) {
      if (swatch.colour.kind !== "file" || readers.reflectance === undefined) continue;
      const path = ["dyes", name, "swatches", i, "reflectance"];
      const colour = from(await readers.reflectance(beside(path, swatch.colour.file)), path);
      if (colour !== undefined) swatches[i] = { ...swatch, colour };
    }
    dyes[name] = { ...dye, swatches };
  }

  const baths = [...spec.baths];
  for (const [index, bath] of spec.baths.entries()) {
    if (bath.start.kind !== "log" || readers.startFromLog === undefined) continue;
    const path = ["baths", index, "start"];
    const start = from(await readers.startFromLog({ index, tank: bath.tank, dye: bath.dye }), path);
    if (start === undefined) continue;
    baths[index] = {
      ...bath,
      start: {
        kind: "kept",
        volume: { value: start.volumeL },
        strength: { value: start.strength },
        age: { value: start.ageDays },
        area: { value: start.areaDm2 },
      },
    };
  }
  return { spec: { ...spec, parts, dyes, baths }, faults };
}
