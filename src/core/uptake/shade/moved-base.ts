import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { dipSeconds } from "../law/dip-time.js";
import type { UptakeModel } from "../law/uptake-model.js";
import type { ChosenCurve } from "../swatches/choose-law.js";
import { labAfter } from "../swatches/shade-curve.js";
import { dyedColour } from "../swatches/swatch-curves.js";
import type { DyeModel } from "./dye-model.js";
import { nearestTime } from "./find-time.js";
import type { ShadeBath } from "./shade-bath.js";
import { measuredBath } from "./shade-bath.js";

/** What a base that changed since the swatches were dyed does to each of their colours. */
export interface MovedBase {
  /** Between the base as it was and as it is [CIEDE2000]. */
  readonly deltaE00: number;
  readonly colours: readonly MovedColour[];
}

export interface MovedColour {
  /** Dip that gave the colour on the base as it was, in the bath as it is. */
  readonly seconds: number;
  /** How far the same dip is off now. */
  readonly deltaE00: number;
  /** The dip that comes nearest to the old colour now, and how near. */
  readonly correctedSeconds: number;
  readonly correctedDeltaE00: number;
}

/** How far a new lot of the swatches' own base moves the colours of the swatches' times; null where it has not moved. */
export function movedBase(
  model: DyeModel & { readonly chosen: ChosenCurve },
  uptake: UptakeModel,
  bath: ShadeBath,
  tolerance = 1.5,
): MovedBase | null {
  const { dye, chosen } = model;
  const { curve } = chosen;
  if (dye.base?.lab === undefined || (bath.base !== undefined && bath.base.name !== dye.base.name))
    return null;
  const deltaE00 = ciede2000(dye.base.lab, curve.set.base.lab);
  if (deltaE00 === 0) return null;
  const now = dyedColour({ kind: "lab", lab: dye.base.lab }, dye.reading, ["bases", dye.base.name, "lab"]);
  if (!now.ok) return null;
  const { ks } = now.value;
  const seconds = (fresh: number): number => dipSeconds(uptake, fresh, measuredBath(model, bath));
  return {
    deltaE00,
    colours: curve.set.swatches.map((swatch) => {
      const old = labAfter(curve, swatch.seconds);
      const nearest = nearestTime(curve, old, tolerance, ks, model.longestSeconds);
      return {
        seconds: seconds(swatch.seconds),
        deltaE00: ciede2000(labAfter(curve, swatch.seconds, ks), old),
        correctedSeconds: seconds(nearest.seconds),
        correctedDeltaE00: nearest.deltaE00,
      };
    }),
  };
}
