import { compareColours } from "../../core/colour/difference/compare-colours.js";
import { changeGrade, stainingGrade } from "../../core/colour/difference/grey-scale.js";
import { defaultReading } from "../../core/colour/resolve-colour.js";
import { compareReport } from "../../report/compare/report.js";
import { readColours } from "../colour/read-colours.js";
import { type Request, type Result, refused, unplaced } from "../command.js";
import type { Io } from "../io.js";
import type { CompareTask } from "./read-task.js";
import { sideOf, sidesOf } from "./sides.js";

type Typed = CompareTask["what"] & { readonly kind: "colours" };

/**
 * Compares a colour, or several readings of a part, with another one under one reading: the one asked for, else a
 * shade's, else the usual one for such colours. A part beside its shade is judged.
 */
export async function compareTyped(
  { typed, spec, bath }: Typed,
  task: CompareTask,
  request: Request,
  io: Io,
): Promise<Result> {
  const named = typed.map((text, i) => [String.fromCharCode(65 + i), text] as const);
  const { colours, batch, diagnostics } = await readColours(named, spec, request, io);
  if (colours === undefined) return { diagnostics };
  const sides = sidesOf(colours);
  if (!sides.ok) return refused(...sides.faults);
  const { standard, samples, ofShade } = sides.value;
  const usual = task.reading ?? defaultReading(colours.map(({ colour }) => colour));
  const shades = colours
    .filter(({ colour }) => colour.kind !== "hex")
    .flatMap((given) => given.readUnder ?? []);
  const reading = task.reading ?? shades[0] ?? usual;
  const one = sideOf("standard", [standard], usual, reading);
  const other = sideOf("sample", samples, usual, reading);
  const faults = [...one.faults, ...other.faults];
  if (!one.ok || !other.ok) return { diagnostics: [...diagnostics, ...faults.map(unplaced)] };
  const shade = ofShade ? standard.shade : undefined;
  const limit = task.limit ?? (shade && { formula: "ciede2000" as const, tolerance: shade.tolerance });
  const compared = compareColours(one.value.colour, other.value.colour, reading, limit);
  const part =
    shade === undefined || batch === undefined
      ? undefined
      : (await import("./judged.js")).judged(batch, shade, bath, { standard, samples }, usual);
  const said = [...faults, ...compared.faults, ...(part?.faults ?? [])].map(unplaced);
  if (!compared.ok || part?.ok === false) return { diagnostics: [...diagnostics, ...said] };
  const labs = [compared.value.standard.lab, compared.value.sample.lab] as const;
  return {
    diagnostics: [...diagnostics, ...said],
    report: compareReport(
      compared.value,
      { standard: one.value.origin, sample: other.value.origin },
      {
        change: changeGrade(...labs),
        staining: stainingGrade(...labs),
        ...(other.value.uneven && { uneven: other.value.uneven }),
        ...(part?.value && { part: part.value }),
      },
    ),
    missed: compared.value.verdict?.pass === false,
  };
}
