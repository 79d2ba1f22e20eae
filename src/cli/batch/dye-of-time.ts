import { error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Shade } from "../../core/model/batch.js";
import { dyeModel, hasCurve, type WithCurve } from "../../core/uptake/shade/dye-model.js";

/** The dye of a shade that is given as a time, whose swatches must tell its colour; `option` names a colour instead. */
export function dyeOfTime({ handling }: Batch, { name, dye }: Shade, option: string): Outcome<WithCurve> {
  const model = dyeModel(dye, handling);
  if (!model.ok) return model;
  return hasCurve(model.value)
    ? { ...model, value: model.value }
    : failed(
        error(
          "no-swatches",
          ["shades", name],
          `shade "${name}" is a time of dye "${dye.name}", whose swatches do not tell its colour`,
          `give the colour itself: --${option} L,a,b`,
        ),
      );
}
