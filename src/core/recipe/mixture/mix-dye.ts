import { done, error, type Fault, failed, isError, type Outcome } from "../../fault.js";
import type { Base } from "../../model/batch.js";
import { volumeShare } from "../../quantity/dye/dilution.js";
import { measuredDilution } from "../../uptake/law/measured-at.js";
import { otherBase } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { hasCurve, type WithCurve } from "../../uptake/shade/dye-model.js";

/** A dye that can be mixed, over the base that is dyed. */
export interface MixDye {
  readonly model: WithCurve;
  readonly name: string;
  /** K/S of the base: of the swatches, or of another. */
  readonly baseKs: Float64Array;
  /** The base is the one that the swatches were dyed on. */
  readonly ownBase: boolean;
  readonly meanAbsorption: number;
  /** Volume that the concentrate of strength 1 takes in the bath [-]; 0 for a powder. */
  readonly share: number;
}

/** A fitted dye over a base; a dye without two swatches is a fault, since its colours are not known. */
export function mixDye(model: DyeModel, base: Base | undefined): Outcome<MixDye> {
  const { name } = model.dye;
  if (!hasCurve(model))
    return failed(
      error(
        "mix-without-curve",
        ["dyes", name],
        `dye "${name}" has fewer than two swatches: its colour in a mixture is not known`,
        `dip more swatches: dipwright swatches --dye ${name} says which; or leave it out`,
      ),
    );
  const other = otherBase(model, base);
  if (!other.ok) return other;
  const { absorption, set } = model.chosen.curve;
  return done({
    model,
    name,
    baseKs: other.value ?? set.base.ks,
    ownBase: other.value === undefined,
    meanAbsorption: absorption.reduce((sum, value) => sum + value, 0) / absorption.length,
    share: volumeShare(measuredDilution(model.dye)),
  });
}

/** Every dye over a base, or every fault. */
export function mixDyes(models: readonly DyeModel[], base: Base | undefined): Outcome<readonly MixDye[]> {
  const made = models.map((model) => mixDye(model, base));
  const faults: Fault[] = made.flatMap((one) => one.faults);
  return faults.some(isError)
    ? failed(...faults)
    : done(
        made.flatMap((one) => (one.ok ? [one.value] : [])),
        faults,
      );
}
