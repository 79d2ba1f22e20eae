import type { Dye, Handling } from "../batch/model.js";
import type { Outcome } from "../fault.js";
import { remember } from "../maths/remember.js";
import { type DyeModel, dyeModel } from "./aim.js";
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
  return (dye, handling) => dyeModel(dye, handling, { setOf, choose });
}
