import type { Outcome } from "../../fault.js";
import { remember } from "../../maths/remember.js";
import type { Base, Dye, Handling, Shade } from "../../model/batch.js";
import { aimAt, type DyeModel, dyeModel, type ShadeAim } from "../shade/aim.js";
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

/** Bases that aims at one shade are remembered on; a workshop has two or three. */
const mostBases = 16;

/** Aims that are remembered at most for one shade curve. */
const mostAims = 1024;

/**
 * An `aimAt` that finds the same shade on the same curve once only; with a `dyeMemory` the curve of a dye is the
 * same in every batch and draw. Results are those of `aimAt`.
 */
export function aimMemory(): AimOf {
  type Kept = { readonly model: DyeModel; readonly aim: Outcome<ShadeAim> };
  const same = new WeakMap<Shade, Map<Base | undefined, Kept>>();
  const known = new WeakMap<object, Map<string, Outcome<ShadeAim>>>();
  return (model, shade, base) => {
    const onBases = same.get(shade) ?? new Map<Base | undefined, Kept>();
    const kept = onBases.get(base);
    if (kept?.model === model) return kept.aim;
    const aim = likeKnown(known, model, shade, base);
    if (onBases.size >= mostBases) onBases.clear();
    same.set(shade, onBases.set(base, { model, aim }));
    return aim;
  };
}

/** The aim at a shade that may be another object with the same content as one that was aimed at before. */
function likeKnown(
  known: WeakMap<object, Map<string, Outcome<ShadeAim>>>,
  ...[model, shade, base]: Parameters<AimOf>
): Outcome<ShadeAim> {
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
}
