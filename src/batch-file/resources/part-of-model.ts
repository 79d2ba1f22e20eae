import { type Fault, type Outcome, warning } from "../../core/fault.js";
import type { MeshMeasure } from "../../core/part/mesh-measure.js";
import { volumeDoubted, volumeDoubts } from "../../core/part/mesh-warnings.js";
import { displacedCm3, wettedCm2 } from "../../core/part/wetted.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import type { Amount } from "../schema/quantities.js";
import type { Spec } from "../to-batch/complete.js";

type Part = Spec["parts"][string];

/** Share by which a written value may differ from the model without a warning [-]. Common practice, no source. */
const mayDiffer = 0.05 * (1 + 1e-9);

/** No plastic is lighter or heavier than this [g/cm3]: the unit is wrong. Common practice, no source. */
const lightest = 0.3;
const heaviest = 3;

/** Common in good exports and without effect: only `measure` reports them. */
const harmless: readonly string[] = ["mesh-flat", "mesh-welded"];

const short = (value: number): string => shortNumber(value, 3);

/** Codes of faults that make the model's area differ from the part's. */
const areaDoubts: readonly string[] = ["mesh-open", "mesh-doubled"];

/** Help for a volume that is needed but unknown. */
const byHand = "repair the model, or write mass: 6.4 g or volume: 6.9 cm3 beside it";

/** Help for duplicate bodies. */
const removeBody = "remove the duplicate body, or write area: and mass: beside the model";

/** Help for a fault of a model, in terms of the batch file. */
function helpFor({ code, help }: Fault, mesh: Part["mesh"], trusted: boolean): string {
  if (code === "mesh-unit" && help === undefined) return "leave out unit:";
  if (code === "mesh-unit")
    return mesh?.unit === undefined
      ? `write mesh: { file: ${mesh?.file}, unit: inch }`
      : "write the unit that it is drawn in";
  if (code === "mesh-doubled") return removeBody;
  if (code === "mesh-cavity" || code === "mesh-shared-face")
    return "they are left out of the area; write area: if liquor gets in";
  if (!trusted && help !== undefined) return byHand;
  return help ?? "run dipwright measure to see more about the file";
}

/** Faults of the model, at their place in the batch. A doubtful figure that the batch needs is an error. */
function told(
  faults: readonly Fault[],
  part: Part,
  file: string,
  path: Fault["path"],
  trusted: boolean,
): Fault[] {
  const doubled = faults.some(({ code }) => code === "mesh-doubled");
  const needed =
    (!trusted && part.mass === undefined && part.volume === undefined) ||
    (doubled && part.area === undefined);
  const nothingTaken = !needed && !trusted && part.area !== undefined;
  return faults
    .filter(({ code }) => !harmless.includes(code) && !nothingTaken)
    .map((fault) => {
      const doubt = volumeDoubts.includes(fault.code);
      const open = doubt && !needed;
      return {
        code: fault.code,
        severity: doubt && needed ? "error" : fault.severity,
        path,
        message: `${file}: ${open ? fault.message.replace(volumeDoubted, "") : fault.message}`,
        help: open
          ? "repair the model, or write area: too; the area counts only the triangles in the file"
          : fault.severity === "error"
            ? (fault.help ?? "export the model again")
            : helpFor(fault, part.mesh, !doubt),
      };
    });
}

/**
 * A weighed mass gives the density, so it is not compared with one from the assumed density; a mass that no plastic
 * can have still shows a model in the wrong unit.
 */
function densityFault(
  { mass }: Part,
  { volumeCm3 }: MeshMeasure,
  file: string,
  path: Fault["path"],
): Fault[] {
  if (mass === undefined) return [];
  const density = mass.value / volumeCm3;
  if (density >= lightest && density <= heaviest) return [];
  return [
    warning(
      "mesh-density",
      [...path.slice(0, -1), "mass"],
      `${short(mass.value)} g in the ${short(volumeCm3)} cm3 of ${file} make ${short(density)} g/cm3, which no plastic has`,
      "correct mass:, or give the unit of the model, such as unit: inch",
    ),
  ];
}

/** Warnings of written values that differ from the model's. */
function differences(
  part: Part,
  of: MeshMeasure,
  file: string,
  path: Fault["path"],
  trusted: boolean,
  whole: boolean,
): Fault[] {
  const compare = (
    key: "mass" | "area" | "volume",
    unit: string,
    scale: number,
    model: number,
    how: string,
    help: string,
  ): Fault[] => {
    const written = part[key];
    if (written === undefined) return [];
    const value = written.value * scale;
    if (Math.abs(value - model) <= mayDiffer * model) return [];
    return [
      warning(
        "mesh-differs",
        [...path.slice(0, -1), key],
        `${key} is written as ${short(value)} ${unit}, and ${file} has ${short(model)} ${unit}${how}: the written value is used`,
        help,
      ),
    ];
  };
  const density = part.density.value;
  const remove = (key: string): string => `remove ${key}: to take the model's, or correct it`;
  return [
    ...(trusted
      ? part.density.assumed === true
        ? densityFault(part, of, file, path)
        : compare("mass", "g", 1, of.volumeCm3 * density, ` at ${density} g/cm3`, remove("mass"))
      : []),
    ...(whole ? compare("area", "cm2", 100, wettedCm2(of), "", remove("area")) : []),
    ...(trusted ? compare("volume", "cm3", 1, displacedCm3(of), "", remove("volume")) : []),
  ];
}

/** Mass of a volume; assumed if the density is. */
const massOf = (volumeCm3: number, { value, plusMinus, assumed }: Amount): Amount => ({
  value: volumeCm3 * value,
  ...(plusMinus === undefined ? {} : { plusMinus: volumeCm3 * plusMinus }),
  ...(assumed === true ? { assumed } : {}),
});

/**
 * A part with the figures of its model file; values written beside it win. A volume that cannot be trusted is not used,
 * so mass or volume must be written then.
 */
export function partOfModel(
  name: string,
  part: Part,
  file: string,
  model: Outcome<MeshMeasure>,
): { readonly part: Part; readonly faults: readonly Fault[] } {
  const path = ["parts", name, "mesh"];
  if (!model.ok) return { part, faults: told(model.faults, part, file, path, true) };
  const of = model.value;
  const trusted = of.volumeTrusted;
  const faults = [
    ...told(model.faults, part, file, path, trusted),
    ...differences(
      part,
      of,
      file,
      path,
      trusted,
      !model.faults.some(({ code }) => areaDoubts.includes(code)),
    ),
  ];
  const solid = part.volume?.value ?? (trusted ? of.volumeCm3 : undefined);
  const mass = part.mass ?? (solid === undefined ? undefined : massOf(solid, part.density));
  const volume = part.volume ?? (trusted ? { value: displacedCm3(of) } : undefined);
  return {
    part: {
      ...part,
      area: part.area ?? { value: wettedCm2(of) / 100 },
      boxMm: of.boxMm,
      ...(mass === undefined ? {} : { mass }),
      ...(volume === undefined ? {} : { volume }),
    },
    faults,
  };
}
