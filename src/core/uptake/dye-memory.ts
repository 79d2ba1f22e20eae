import type { Base, Dye, Handling, Shade } from "../batch/model.js";
import type { Outcome } from "../fault.js";
import { remember } from "../maths/remember.js";
import { aimAt, type DyeModel, dyeModel, type ShadeAim } from "./aim.js";
import { chooseCurve } from "./choose-law.js";
import { swatchSet } from "./swatch-curves.js";

/** How a dye's model is come by: `dyeModel`, or one that remembers. */
export type ModelOf = (dye: Dye, handling: Handling) => Outcome<DyeModel>;

/** Dyes that are remembered at most; a workshop has a dozen. */
const most = 256;

/**
 * A `dyeModel` that fits the same swatches once only, whichever batch or draw they come in: the swatches, their
 * base and reading, the law and the rate decide what is the same. Results are those of `dyeModel`.
 */
export function dyeMemory(): ModelOf {
  const swatchKey = (dye: Dye): string => JSON.stringify([dye.name, dye.base, dye.reading, dye.swatches]);
  const setOf = remember(swatchSet, swatchKey, most);
  const choose = remember(
    (dye: Dye, set: Parameters<typeof chooseCurve>[0]) => chooseCurve(set, dye.law, dye.ratePerSecond),
    (dye) => `${dye.law} ${dye.ratePerSecond} ${swatchKey(dye)}`,
    most,
  );
  const same = new WeakMap<Dye, { readonly handling: Handling; readonly model: Outcome<DyeModel> }>();
  return (dye, handling) => {
    const known = same.get(dye);
    if (known?.handling === handling) return known.model;
    const model = dyeModel(dye, handling, { setOf, choose });
    same.set(dye, { handling, model });
    return model;
  };
}

/** How it is found what a shade asks for: `aimAt`, or one that remembers. */
export type AimOf = (model: DyeModel, shade: Shade, base: Base | undefined) => Outcome<ShadeAim>;

/** Aims that are remembered at most for one shade curve. */
const mostAims = 1024;

/**
 * An `aimAt` that finds the same shade on the same curve once only; with a `dyeMemory` the curve of a dye is the
 * same in every batch and draw. Results are those of `aimAt`; any with something to say are found anew.
 */
export function aimMemory(): AimOf {
  const known = new WeakMap<object, Map<string, Outcome<ShadeAim>>>();
  return (model, shade, base) => {
    const curve = model.chosen?.curve;
    if (curve === undefined) return aimAt(model, shade, base);
    const aims = known.get(curve) ?? new Map<string, Outcome<ShadeAim>>();
    known.set(curve, aims);
    const { law, ratePerSecond, saturation, referenceSeconds } = model.uptake;
    const key = JSON.stringify([
      shade.target,
      shade.tolerance,
      base,
      law,
      ratePerSecond,
      saturation,
      referenceSeconds,
    ]);
    const before = aims.get(key);
    if (before !== undefined) return before;
    const aim = aimAt(model, shade, base);
    if (!aim.ok || aim.faults.length > 0) return aim;
    if (aims.size >= mostAims) aims.clear();
    aims.set(key, aim);
    return aim;
  };
}

/** All that `planBatch` can remember over many batches or draws. */
export const planMemory = (): { readonly modelOf: ModelOf; readonly aimOf: AimOf } => ({
  modelOf: dyeMemory(),
  aimOf: aimMemory(),
});
