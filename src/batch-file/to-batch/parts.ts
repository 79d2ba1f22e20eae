import { blankCost } from "../../core/cost/rate/blank.js";
import { mapped } from "../../core/mapped.js";
import type * as model from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import { isBuild } from "../schema/blank.js";
import type { Amount } from "../schema/quantities.js";
import { isAmount } from "./amounts.js";
import type { Spec } from "./complete.js";
import { present } from "./present.js";

type Part = Spec["parts"][string];
type Blank = NonNullable<Part["blank"]>;
type Build = Extract<Blank, { powder: Amount }>;
const isBuilt = (of: Blank): of is Build => isBuild(of);

const oneBlank = (of: Amount | Build, massG: number): number =>
  isBuilt(of)
    ? blankCost({
        massG,
        powderPerKg: of.powder.value,
        refresh: of.refresh.value,
        packing: of.packing.value,
        buildHours: of.build.value,
        machinePerHour: of.machine.value,
        partsPerBuild: of.partsPerBuild,
        finishing: of.finishing?.value ?? defaults.blank.finishing,
      }).total
    : of.value;

const blank = (of: Blank | undefined, massG: number): number | ReadonlyMap<string, number> | undefined => {
  if (of === undefined) return undefined;
  if (isAmount(of) || isBuilt(of)) return oneBlank(of, massG);
  return new Map(mapped(Object.entries(of), ([base, each]) => [base, oneBlank(each, massG)]));
};

export const part = (of: Part, name: string): model.Part => {
  if (of.mass === undefined || of.area === undefined) throw new Error(`the part ${name} was not measured`);
  return present({
    name,
    massG: of.mass.value,
    areaDm2: of.area.value,
    volumeCm3: of.volume?.value ?? of.mass.value / of.density.value,
    massAssumed: of.mass.assumed,
    boxMm: of.boxMm,
    blank: blank(of.blank, of.mass.value),
    stock: typeof of.stock === "object" ? new Map(Object.entries(of.stock)) : of.stock,
    leadTimeDays: of.leadTime?.value,
    perLoad: of.perLoad,
    dragOutMlPerDm2: of.dragOut?.value,
    heatCapacityKjPerKgK: of.heatCapacity.value,
  });
};
