import type { Dilution } from "../../model/batch.js";
import { coldPerHot } from "../water.js";

/** An amount of dye under the name that says its unit: mL of concentrate or g of powder, measured cold. */
export type DyeAmount = { readonly concentrateMl: number } | { readonly powderG: number };

interface Fill {
  readonly volumeHotL: number;
  readonly volumeColdL: number;
  readonly waterMl: number;
}

/** What to pour for a fresh bath; amounts are measured cold. */
export type MakeUp =
  | (Fill & { readonly fraction: number; readonly concentrateMl: number })
  | (Fill & { readonly gramsPerL: number; readonly powderG: number });

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
  const coldMl = volumeColdL * 1000;
  if (dilution.kind === "powder") {
    const { gramsPerL } = dilution;
    return { gramsPerL, volumeHotL, volumeColdL, powderG: gramsPerL * volumeColdL, waterMl: coldMl };
  }
  const { fraction } = dilution;
  const concentrateMl = fraction * coldMl;
  return { fraction, volumeHotL, volumeColdL, concentrateMl, waterMl: coldMl - concentrateMl };
}

/** Dye in a made-up bath: mL of concentrate or g of powder. */
export const dyeOf = (made: MakeUp): number => ("powderG" in made ? made.powderG : made.concentrateMl);
