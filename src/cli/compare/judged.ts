import { done, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Shade } from "../../core/model/batch.js";
import type { Reading } from "../../core/model/colour.js";
import { judgePart } from "../../core/quality/judge-part.js";
import { unevenness } from "../../core/quality/unevenness.js";
import { dyeModel } from "../../core/uptake/shade/dye-model.js";
import type { JudgedPart } from "../../report/compare/part.js";
import { optionReader } from "../option-reader.js";
import { labsUnder, type Sides } from "./sides.js";

/** The bath of a second dip, as typed. */
export interface TypedBath {
  readonly strength?: string;
  readonly temperature?: string;
}

/** How a part lies along the curve of its shade's dye; null where that curve is not known. */
export function judged(
  { handling }: Batch,
  { dye }: Shade,
  typed: TypedBath,
  { standard, samples }: Pick<Sides, "standard" | "samples">,
  usual: Reading,
): Outcome<JudgedPart | null> {
  const read = optionReader((option) => typed[option as keyof TypedBath]);
  const strength = read.quantity("strength", "percent", {
    above: 0,
    must: "the strength of a bath is above 0 %",
  });
  const celsius = read.quantity("temperature", "temperature", {
    above: 0,
    to: 99,
    must: "a bath is between 0 and 99 °C",
  });
  if (read.faults.length > 0) return failed(...read.faults);
  // A mix has no curve of one dye along which a part could go on.
  if (dye.mix !== undefined) return done(null);
  const model = dyeModel(dye, handling);
  if (!model.ok) return model;
  const [shade, part] = [[standard], samples].map((side) => labsUnder(side, usual, dye.reading));
  // Both were carried over to the reading of the report already; another fault would have come up there.
  if (!shade!.ok || !part!.ok) return failed(...shade!.faults, ...part!.faults);
  const bath = { strength: strength ?? 1, celsius: celsius ?? dye.celsius };
  const depth = judgePart(model.value, unevenness(part!.value).lab, shade!.value[0]!, bath);
  return done(depth && { ...depth, dye: dye.name, bath, shortestSeconds: handling.shortestSeconds });
}
