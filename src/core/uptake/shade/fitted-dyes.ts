import { done, type Outcome } from "../../fault.js";
import { madeOnce } from "../../made-once.js";
import type { Base, Dye, Handling, Shade } from "../../model/batch.js";
import { measuredCelsius } from "../law/measured-at.js";
import { type SwatchSet, swatchSet } from "../swatches/swatch-curves.js";
import { aimAt, type ShadeAim } from "./aim.js";
import { type ChosenDye, chooseForDye, type DyeModel, dyeModel } from "./dye-model.js";

/** A dye's model, and what shades have asked of its curve so far. */
export interface FittedDye {
  readonly model: DyeModel;
  readonly aims: Map<string, ShadeAim>;
}

/** Dyes that are kept; a workshop has a dozen. */
const mostDyes = 256;

/** Aims that are kept for one shade curve. */
const mostAims = 1024;

/** What decides which colours a dye's swatches gave; its own temperature does where a swatch has another. */
const swatchKey = (dye: Dye): string =>
  JSON.stringify([
    dye.name,
    dye.base,
    dye.reading,
    dye.swatches,
    dye.swatches.some(({ celsius }) => celsius !== undefined) ? measuredCelsius(dye) : null,
  ]);

/**
 * Dyes with their curves, each fitted once: the swatches, their base and reading, the law and the rate decide which
 * curve it is, whichever batch or draw the dye comes in. Results are those of `dyeModel`.
 */
export class FittedDyes {
  private readonly sets = new Map<string, Outcome<SwatchSet>>();
  private readonly curves = new Map<
    string,
    { readonly chosen: ChosenDye; readonly aims: FittedDye["aims"] }
  >();

  fit(dye: Dye, handling: Handling): Outcome<FittedDye> {
    const key = swatchKey(dye);
    let aims: FittedDye["aims"] = new Map();
    const model = dyeModel(dye, handling, {
      setOf: () => madeOnce(this.sets, key, mostDyes, () => swatchSet(dye)),
      choose: (_, set) => {
        const rate = `${dye.law} ${dye.ratePerSecond} ${handling.timingSeconds}`;
        const curve = madeOnce(this.curves, `${rate} ${key}`, mostDyes, () => ({
          chosen: chooseForDye(dye, set, handling),
          aims: new Map<string, ShadeAim>(),
        }));
        aims = curve.aims;
        return curve.chosen;
      },
    });
    return model.ok ? done({ model: model.value, aims }, model.faults) : model;
  }
}

/** What a shade asks for, as `aimAt`; found once for each curve, target, tolerance and base. Faults are not kept. */
export function aimOf({ model, aims }: FittedDye, shade: Shade, base: Base | undefined): Outcome<ShadeAim> {
  const { law, ratePerSecond, referenceSeconds } = model.uptake;
  const key = JSON.stringify([
    shade.target,
    shade.tolerance,
    base,
    model.longestSeconds,
    law,
    ratePerSecond,
    referenceSeconds,
  ]);
  const known = aims.get(key);
  if (known !== undefined) return done(known);
  const aim = aimAt(model, shade, base);
  if (aim.ok && aim.faults.length === 0) madeOnce(aims, key, mostAims, () => aim.value);
  return aim;
}
