import type { Dilution, Dye } from "../../model/batch.js";
import { figureOf } from "../../quantity/dye/dilution.js";

type Bathed = Pick<Dye, "dilution" | "celsius" | "measuredAt">;

/** The dilution that swatches, rate and shades given as times belong to. */
export const measuredDilution = ({ dilution, measuredAt }: Bathed): Dilution =>
  measuredAt?.dilution ?? dilution;

/** Their temperature [°C]. */
export const measuredCelsius = ({ celsius, measuredAt }: Bathed): number => measuredAt?.celsius ?? celsius;

/**
 * Strength of a fresh bath as it is made up, relative to the fresh bath in which the dye was measured [-]: the
 * ratio of the two dilutions, 1 where the dye was measured in such a bath.
 * @example
 * madeUpStrength({ dilution: { kind: "liquid", fraction: 0.05 }, celsius: 80, measuredAt: { dilution: { kind: "liquid", fraction: 0.1 } } }) // => 0.5
 * madeUpStrength({ dilution: { kind: "powder", gramsPerL: 20 }, celsius: 80 }) // => 1
 */
export function madeUpStrength(dye: Bathed): number {
  const measured = measuredDilution(dye);
  const { dilution } = dye;
  if (dilution.kind !== measured.kind)
    throw new Error(`a dye is measured as ${measured.kind} and made up as ${dilution.kind}`);
  return figureOf(dilution) / figureOf(measured);
}
