import type { Base, Colour } from "../../model/batch.js";
import type { DippedIn } from "../law/dip-time.js";
import { madeUpStrength } from "../law/measured-at.js";
import type { DyeModel } from "./dye-model.js";

/** The bath that is asked about. */
export interface ShadeBath {
  readonly strength: number;
  readonly celsius: number;
  readonly base?: Base;
  /** Of a fresh one, mL of concentrate or g of powder, and its volume; where a tank of the spec holds the dye. */
  readonly makeUp?: ShadeMakeUp;
  /** One dip in it, whose colour was read. */
  readonly trial?: { readonly seconds: number; readonly colour: Colour };
}

export interface ShadeMakeUp {
  readonly dye: number;
  readonly volumeL: number;
}

/** The bath as the dye's model sees it: strength relative to the bath that the dye was measured in. */
export const measuredBath = ({ dye }: DyeModel, { strength, celsius }: ShadeBath): DippedIn => ({
  strength: strength * madeUpStrength(dye),
  celsius,
});
