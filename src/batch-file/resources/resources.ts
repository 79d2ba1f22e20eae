import { append } from "../../core/append.js";
import type { Fault, Outcome } from "../../core/fault.js";
import type { Colour } from "../../core/model/batch.js";
import type { Path } from "../source/source.js";
import type { Spec } from "../to-batch/complete.js";
import type { Entries } from "../to-batch/entries.js";
import type { ReadModel } from "./model-reader.js";

/** Readers of the files that a batch file names, supplied by the caller. Their faults carry no path. */
export interface Readers {
  /** Reads a model file; its name is relative to the working directory. */
  readonly measure?: ReadModel;
  /** Reads a file of one reflectance curve, named likewise. */
  readonly reflectance?: (file: string) => Promise<Outcome<Extract<Colour, { kind: "reflectance" }>>>;
}

/**
 * Fills in the figures of model and reflectance files; each kind that the spec names must have its reader. `beside`
 * resolves a file name against the file that a path came from.
 * @internal
 */
export async function withResources(
  spec: Spec,
  readers: Readers,
  beside: (path: Path, name: string) => string,
): Promise<{ spec: Spec; faults: readonly Fault[] }> {
  const faults: Fault[] = [];
  const from = <T>(outcome: Outcome<T>, path: Path): T | undefined => {
    for (const fault of outcome.faults) faults.push({ ...fault, path });
    return outcome.ok ? outcome.value : undefined;
  };

  const parts: Record<string, Spec["parts"][string]> = {};
  for (const [name, part] of Object.entries(spec.parts)) {
    if (part.mesh === undefined || readers.measure === undefined) continue;
    // Loaded only where a part has a model.
    const { partOfModel } = await import("./part-of-model.js");
    const file = beside(["parts", name, "mesh"], part.mesh.file);
    const measured = partOfModel(name, part, file, await readers.measure(file, part.mesh.unit));
    append(faults, measured.faults);
    parts[name] = measured.part;
  }

  const dyes: Record<string, Spec["dyes"][string]> = {};
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

  return { spec: { ...spec, parts: withThose(spec.parts, parts), dyes: withThose(spec.dyes, dyes) }, faults };
}

/** Entries with some replaced; the same object if none is. */
const withThose = <T>(entries: Entries<T>, others: Entries<T>): Entries<T> =>
  Object.keys(others).length === 0 ? entries : { ...entries, ...others };
