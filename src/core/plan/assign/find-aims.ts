import { append } from "../../append.js";
import { done, error, type Fault, isError, type Outcome, warning } from "../../fault.js";
import type { Batch, Dye } from "../../model/batch.js";
import { isDyed } from "../../model/undyed.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { aimOf, type FittedDye, type FittedDyes } from "../../uptake/shade/fitted-dyes.js";

/** Models of all dyes that orders ask for, and what each order aims at. */
export function findAims(
  batch: Batch,
  dyes: FittedDyes,
): Outcome<{ models: Map<Dye, DyeModel>; aims: ShadeAim[] }> {
  const models = new Map<Dye, DyeModel>();
  const fitted = new Map<Dye, FittedDye | undefined>();
  const found: ShadeAim[] = [];
  const faults: Fault[] = [];
  for (const order of batch.orders.filter(isDyed)) {
    const { dye } = order.shade;
    if (!batch.baths.some((bath) => bath.dye === dye)) {
      faults.push(
        error(
          "no-bath",
          ["orders", order.index],
          `no bath holds dye "${dye.name}", which shade "${order.shade.name}" needs`,
          `add a bath: - { tank: ..., dye: ${dye.name} }`,
        ),
      );
      continue;
    }
    if (!fitted.has(dye)) {
      const fit = dyes.fit(dye, batch.handling);
      append(faults, fit.faults);
      fitted.set(dye, fit.ok ? fit.value : undefined);
      if (fit.ok) {
        models.set(dye, fit.value.model);
        faults.push(...doubtfulSwatches(fit.value.model));
      }
    }
    const known = fitted.get(dye);
    if (!known) continue;
    const aim = aimOf(known, order.shade, order.base);
    append(faults, aim.faults);
    if (aim.ok) found[order.index] = aim.value;
  }
  return faults.some(isError) ? { ok: false, faults } : done({ models, aims: found }, faults);
}

/** Leave-one-out error over which readings are off by 2 and more per axis, by the simulation of invented dyes [CIEDE2000]. */
const badPrediction = 2.5;

function doubtfulSwatches({ dye, chosen }: DyeModel): Fault[] {
  const own = chosen?.tried.find(({ law }) => law === chosen.curve.law);
  if (own === undefined || own.median <= badPrediction) return [];
  return [
    warning(
      "swatches-doubtful",
      ["dyes", dye.name, "swatches"],
      `the swatches of dye "${dye.name}" do not agree: their leave-one-out prediction error is ${own.median.toFixed(1)} CIEDE2000, so its times are rough`,
      "read them again under one light, or dip new ones; a phone is off by 0.5 to 2 and more",
    ),
  ];
}
