import type { Dilution } from "../../model/batch.js";
import { figureOf, volumeShare } from "../../quantity/dye/dilution.js";
import { type DyeAmount, dyeFigures } from "../../quantity/dye/dye-figures.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { coldPerHot } from "../water.js";

/** A bath as it is, and as it should be. Volumes are measured hot; strength is 1 in a fresh bath. */
export interface ToppingAsked {
  readonly volumeL: number;
  readonly strength: number;
  readonly toVolumeL: number;
  readonly toStrength: number;
  readonly celsius: number;
  readonly roomCelsius: number;
  readonly dilution: Dilution;
}

/** What to do, in this order: take hot liquor out, then pour in dye and water, measured cold. */
export type Topping = DyeAmount & {
  /** Above 0 where the bath is too full for what must go in. */
  readonly takeOutHotL: number;
  readonly waterMl: number;
  readonly strength: number;
  /** The bath is stronger than asked for and only water is added; `strength` is what results. */
  readonly tooStrong: boolean;
};

/** Least hot liquor to take out so that neither dye nor water to add is negative. */
function takeOutL(asked: ToppingAsked, fraction: number): number {
  const { volumeL, strength, toVolumeL, toStrength } = asked;
  const room = toVolumeL - volumeL;
  if (strength > toStrength) return room > 0 ? 0 : volumeL - (toStrength * toVolumeL) / strength;
  const missing = toStrength * toVolumeL - strength * volumeL;
  const lacking = fraction * missing - room;
  return lacking <= 0 ? 0 : lacking / (1 - fraction * strength);
}

/**
 * What brings a bath from one volume and strength to another.
 *
 * Dye to add = (s* V* - s V) in volumes of fresh liquor, times the fraction as concentrate or the g/L as powder;
 * water is the rest of V* - V. Where water would be negative, least liquor is taken out first:
 * x = (f (s* V* - s V) - (V* - V))/(1 - f s). Where the bath is too strong and dye would be negative, only water is
 * added and s V/V* results; a full bath that is too strong is taken down until water alone gives s*. Undefined
 * where the strength asked for is above that of the concentrate (f s* over 1).
 * Volumes V are hot, amounts cold: hot × ρ(T)/ρ(room).
 * @source kell1975 equation 16
 * @example
 * topping({ volumeL: 5, strength: 0.8, toVolumeL: 6, toStrength: 1, celsius: 20, roomCelsius: 20, dilution: { kind: "liquid", fraction: 0.1 } }).waterMl // => 800
 * topping({ volumeL: 6, strength: 0.5, toVolumeL: 6, toStrength: 1, celsius: 20, roomCelsius: 20, dilution: { kind: "liquid", fraction: 0.1 } }).takeOutHotL // => 0.315789
 * topping({ volumeL: 5, strength: 1.5, toVolumeL: 6, toStrength: 1, celsius: 20, roomCelsius: 20, dilution: { kind: "liquid", fraction: 0.1 } }).strength // => 1.25
 */
export function topping(asked: ToppingAsked): Topping | undefined {
  const { volumeL, strength, toVolumeL, toStrength, dilution } = asked;
  const fraction = volumeShare(dilution);
  if (fraction * toStrength > 1) return undefined;
  const takeOutHotL = takeOutL(asked, fraction);
  const keptL = volumeL - takeOutHotL;
  const missingL = toStrength * toVolumeL - strength * keptL;
  const freshL = Math.max(0, missingL);
  const coldMlPerHotL = coldPerHot(asked.celsius, asked.roomCelsius) * 1000;
  const pouredMl = Math.max(0, toVolumeL - keptL) * coldMlPerHotL;
  const result = {
    takeOutHotL,
    strength: (strength * keptL + freshL) / toVolumeL,
    tooStrong: missingL < -1e-12 * toVolumeL,
  };
  const roomMl = fraction * freshL * coldMlPerHotL;
  const dye = dyeKinds[dilution.kind].takesRoom
    ? roomMl
    : (freshL * coldMlPerHotL * figureOf(dilution)) / 1000;
  return {
    ...result,
    ...dyeFigures(dilution.kind, { amount: dye }),
    waterMl: Math.max(0, pouredMl - roomMl),
  };
}
