import type { DyeModel } from "../uptake/aim.js";
import type { Batch, Dye } from "./model.js";
import type { Assumption } from "./plan-model.js";

/** The figures that the results rest on and that nobody measured here. */
export function assumptionsOf(batch: Batch, models: ReadonlyMap<Dye, DyeModel>): Assumption[] {
  const found: Assumption[] = [];
  const add = (code: string, path: (string | number)[], message: string): void => {
    found.push({ code, path, message });
  };
  const used = new Set(batch.baths.map((bath) => bath.dye));
  for (const dye of used) {
    const unit = dye.dilution.kind === "liquid" ? "mL of concentrate" : "g of powder";
    if (dye.uptakeAssumed)
      add(
        "assumed-uptake",
        ["dyes", dye.name, "uptake"],
        `dye "${dye.name}": ${dye.uptakePerDm2} ${unit} per dm2 at depth 1, ± 100 %, is assumed: strength, top-up, bath life and dye cost rest on it until your own loads are logged`,
      );
    const model = models.get(dye)?.uptake;
    if (model && dye.swatches.length === 0)
      add(
        "assumed-reference",
        ["dyes", dye.name],
        `dye "${dye.name}" has no swatches: depth 1 stands for ${model.referenceSeconds} s in a fresh bath, and no colour is known`,
      );
  }
  if (batch.handling.dragOutAssumed)
    add(
      "assumed-drag-out",
      ["handling", "dragOut"],
      `${batch.handling.dragOutMlPerDm2} mL of liquor carried out per dm2, ± 60 %, is assumed: weigh ten parts wet and dry for your own figure`,
    );
  for (const tank of new Set(batch.baths.map((bath) => bath.tank)))
    if (tank.surfaceAssumed)
      add(
        "assumed-surface",
        ["tanks", tank.name, "surface"],
        `tank "${tank.name}": a liquor surface of ${Math.round(tank.surfaceCm2)} cm2 (as deep as wide) is assumed: heat and evaporation rest on it`,
      );
  return found;
}
