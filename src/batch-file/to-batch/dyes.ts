import { mapped } from "../../core/mapped.js";
import type * as model from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import { dilutionOf } from "../../core/quantity/dye/dilution.js";
import type { Spec } from "./complete.js";
import { found } from "./found.js";
import { present } from "./present.js";

type Dye = Spec["dyes"][string];
type Shade = Spec["shades"][string];

const colour = (of: Dye["swatches"][number]["colour"]): model.Colour => {
  if (of.kind === "file") throw new Error(`the reflectance file ${of.file} was not read`);
  return of;
};

const dilution = ({ kind, value }: Dye["dilution"]): model.Dilution => dilutionOf(kind, value);

export const dye = (of: Dye, name: string, ownBase: model.Base | undefined): model.Dye =>
  present({
    name,
    price: of.price?.value,
    dilution: dilution(of.dilution),
    celsius: of.temperature.value,
    measuredAt:
      of.measuredAt &&
      present({
        dilution: of.measuredAt.dilution && dilution(of.measuredAt.dilution),
        celsius: of.measuredAt.temperature?.value,
      }),
    base: ownBase,
    reading: of.reading,
    swatches: mapped(of.swatches, (swatch) => ({
      seconds: swatch.time.value,
      ...(swatch.strength === undefined || swatch.strength.value === defaults.swatch.strength
        ? {}
        : { strength: swatch.strength.value }),
      ...(swatch.temperature === undefined ? {} : { celsius: swatch.temperature.value }),
      colour: colour(swatch.colour),
    })),
    law: of.law,
    ratePerSecond: of.rate?.value,
    saturation: of.saturation,
    stock: of.stock?.value,
    leadTimeDays: of.leadTime?.value,
    activationEnergyJPerMol: of.activationEnergy.value,
    activationEnergyAssumed: of.activationEnergy.assumed === true,
    strengthExponent: of.strengthExponent?.value,
    timeFactor: of.timeFactor === defaults.dye.timeFactor ? undefined : of.timeFactor,
    uptakePerDm2: of.uptake.value,
    uptakeAssumed: of.uptake.assumed === true,
    uptakeFound: found(of.uptake),
    shelfLifeDays: of.shelfLife?.value,
    notes: of.notes,
  });

function target(of: Shade): model.ShadeTarget {
  if (of.time !== undefined) return { kind: "time", seconds: of.time.value };
  if (of.swatch !== undefined) return { kind: "swatch", seconds: of.swatch.value };
  if (of.lab !== undefined) return { kind: "colour", colour: { kind: "lab", lab: of.lab } };
  return { kind: "colour", colour: { kind: "hex", hex: of.hex ?? "" } };
}

export const shade = (of: Shade, name: string, own: model.Dye): model.Shade => ({
  name,
  dye: own,
  target: target(of),
  tolerance: of.tolerance,
});
