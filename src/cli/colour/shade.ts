import { srgbReading } from "../../core/colour/screen/srgb.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Shade } from "../../core/model/batch.js";
import { aimAt } from "../../core/uptake/shade/aim.js";
import { dyeModel } from "../../core/uptake/shade/dye-model.js";
import type { Given } from "./given.js";

/** The colour of a shade: as it was given, or what its dip time gives in a fresh bath on the dye's own base. */
export function shadeColour(shade: Shade, { handling }: Batch): Outcome<Given> {
  const { target, dye, name } = shade;
  const colour =
    target.kind === "colour"
      ? target.colour
      : target.kind === "swatch"
        ? dye.swatches.find(({ seconds }) => seconds === target.seconds)?.colour
        : undefined;
  if (colour !== undefined)
    return done({ said: name, shade, colour, readUnder: colour.kind === "hex" ? srgbReading : dye.reading });
  const model = dyeModel(dye, handling);
  if (!model.ok) return model;
  const aim = aimAt(model.value, shade, undefined);
  if (!aim.ok) return aim;
  const { lab } = aim.value;
  return lab === null
    ? failed(
        error(
          "no-swatches",
          ["shades", name],
          `shade "${name}" is given as a time, and dye "${dye.name}" has no swatches to tell its colour`,
          "add swatches to the dye, or give the shade as lab or hex",
        ),
      )
    : done({ said: name, shade, colour: { kind: "lab", lab }, readUnder: dye.reading }, aim.faults);
}
