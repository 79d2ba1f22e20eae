import type { BathStart, Colour } from "../core/batch/model.js";
import type { Fault, Outcome } from "../core/fault.js";
import type { Spec } from "./complete.js";
import type { Path } from "./source.js";

/** What a mesh file says of a part; volume as in the mesh, mass from the material's density. */
export interface Measured {
  readonly massG: number;
  readonly areaDm2: number;
  readonly volumeCm3: number;
}

/** State of a bath as its log leaves it. */
export type LoggedStart = Extract<BathStart, { kind: "kept" }>;

/** Readers of what a batch file points at, each given by whoever runs the command. Faults carry no path. */
export interface Readers {
  /** A mesh file, named as seen from where the command runs. */
  readonly measure?: (file: string) => Promise<Outcome<Measured>>;
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
    faults.push(...outcome.faults.map((fault) => ({ ...fault, path })));
    return outcome.ok ? outcome.value : undefined;
  };

  const parts = { ...spec.parts };
  for (const [name, part] of Object.entries(spec.parts)) {
    if (part.mesh === undefined || (part.mass !== undefined && part.area !== undefined)) continue;
    if (readers.measure === undefined) continue;
    const path = ["parts", name, "mesh"];
    const measured = from(await readers.measure(beside(path, part.mesh)), path);
    if (measured === undefined) continue;
    parts[name] = {
      ...part,
      mass: part.mass ?? { value: measured.massG },
      area: part.area ?? { value: measured.areaDm2 },
      volume: part.volume ?? { value: measured.volumeCm3 },
    };
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
