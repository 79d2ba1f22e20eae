import type { Dilution } from "../../model/batch.js";
import { figureOf, type KeyedFigure, keyedFigure } from "../../quantity/dye/dilution.js";
import { dyeFigures, type FiguresOf, figureOfDye } from "../../quantity/dye/dye-figures.js";
import { type DyeKind, dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { coldPerHot } from "../water.js";

interface Fill {
  readonly volumeHotL: number;
  readonly volumeColdL: number;
  readonly waterMl: number;
}

/** What to pour for a fresh bath; amounts are measured cold. */
export type MakeUp = {
  [Kind in DyeKind]: Fill & KeyedFigure<Kind> & FiguresOf<Kind, "amount">;
}[DyeKind];

/**
 * What a fresh bath of a hot working volume is made of.
 *
 * Cold fill [L] = hot volume × ρ(T)/ρ(room); concentrate = fraction × cold fill, water the rest, volumes taken
 * as additive; powder [g] = g/L × cold fill, in the whole cold fill of water. Valid from 0 to 100 °C.
 * @source kell1975 equation 16
 * @example
 * makeUp({ volumeHotL: 6, celsius: 80, roomCelsius: 20, dilution: { kind: "liquid", fraction: 0.1 } }).concentrateMl // => 584.1
 * makeUp({ volumeHotL: 6, celsius: 20, roomCelsius: 20, dilution: { kind: "powder", gramsPerL: 20 } }).powderG // => 120
 */
export function makeUp(input: {
  readonly volumeHotL: number;
  readonly celsius: number;
  readonly roomCelsius: number;
  readonly dilution: Dilution;
}): MakeUp {
  const { volumeHotL, dilution } = input;
  const volumeColdL = volumeHotL * coldPerHot(input.celsius, input.roomCelsius);
  const { inFill, takesRoom } = dyeKinds[dilution.kind];
  const dye = inFill(figureOf(dilution), volumeColdL);
  return {
    ...keyedFigure(dilution),
    volumeHotL,
    volumeColdL,
    ...dyeFigures(dilution.kind, { amount: dye }),
    waterMl: volumeColdL * 1000 - (takesRoom ? dye : 0),
  } as MakeUp;
}

/** Dye in a made-up bath: mL of concentrate or g of powder. */
export const dyeOf = (made: MakeUp): number => figureOfDye(made, "amount");
