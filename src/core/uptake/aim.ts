import type { Base, Dye, Handling, Lab, Shade } from "../batch/model.js";
import { done, error, failed, type Outcome } from "../fault.js";
import { depthAt, type UptakeModel } from "./depth.js";

/** What is known of a dye before the bath is looked at. */
export interface DyeModel {
  readonly dye: Dye;
  readonly uptake: UptakeModel;
}

/** What a shade asks of any bath with its dye: a depth, and what is known of its colour. */
export interface ShadeAim {
  readonly depth: number;
  /** Colour that the depth gives; null where the dye has no swatches to tell. */
  readonly lab: Lab | null;
  /** Difference between that colour and the shade. */
  readonly deltaE00: number | null;
  /** Depths within the shade's tolerance; the far end is null where no dip is too long. */
  readonly window: { readonly from: number; readonly to: number | null } | null;
  /** CIEDE2000 per unit of depth. */
  readonly slopePerDepth: number | null;
  readonly extrapolated: boolean;
}

/** The time that depth 1 stands for: the longest swatch; without swatches the longest dip. */
export const referenceSecondsOf = (
  dye: Pick<Dye, "swatches">,
  handling: Pick<Handling, "longestSeconds">,
): number =>
  dye.swatches.length > 0
    ? Math.max(...dye.swatches.map((swatch) => swatch.seconds))
    : handling.longestSeconds;

/** The uptake model of a dye with a given rate. */
export function dyeModel(dye: Dye, handling: Handling): Outcome<DyeModel> {
  if (dye.ratePerSecond === undefined)
    return failed(
      error(
        "no-rate",
        ["dyes", dye.name],
        `dye "${dye.name}" has no rate, and fitting one to swatches is not in this version yet`,
        "write rate: 0.012 /s (and law:, where it is not first-order)",
      ),
    );
  return done({
    dye,
    uptake: {
      law: dye.law === "auto" ? "first-order" : dye.law,
      ratePerSecond: dye.ratePerSecond,
      referenceSeconds: referenceSecondsOf(dye, handling),
      referenceCelsius: dye.celsius,
      ...(dye.saturation === undefined ? {} : { saturation: dye.saturation }),
      activationEnergyJPerMol: dye.activationEnergyJPerMol,
    },
  });
}

/** The depth a shade asks for. A shade given as a time or a swatch is what that time gives in a fresh bath. */
export function aimAt(model: DyeModel, shade: Shade, _base: Base | undefined): Outcome<ShadeAim> {
  const { target } = shade;
  if (target.kind === "colour")
    return failed(
      error(
        "no-colour-model",
        ["shades", shade.name],
        `shade "${shade.name}" is given as a colour, and finding its time is not in this version yet`,
        "give the shade as time: 30 s",
      ),
    );
  const { uptake } = model;
  return done({
    depth: depthAt(uptake, { seconds: target.seconds, strength: 1, celsius: uptake.referenceCelsius }),
    lab: null,
    deltaE00: null,
    window: null,
    slopePerDepth: null,
    extrapolated: target.seconds > uptake.referenceSeconds,
  });
}
