import { figureOf } from "../../quantity/dye/dilution.js";
import { type DyeKind, dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { measuredDilution } from "../../uptake/law/measured-at.js";
import type { MixDye } from "../mixture/mix-dye.js";

/** Dye in a bath of several: mL of concentrate or g of powder, measured cold. */
export interface DyePoured {
  readonly name: string;
  readonly kind: DyeKind;
  readonly amount: number;
}

/** What to pour for a cold volume. */
export interface Poured {
  readonly dyes: readonly DyePoured[];
  readonly waterMl: number;
  readonly coldMl: number;
}

const kindOf = ({ model }: MixDye): DyeKind => model.dye.dilution.kind;

/** The dye of a strength in a cold volume: s f V, f the fraction or g/L of the dye's own fresh bath. */
export const amountOf = (dye: MixDye, strength: number, coldMl: number): number =>
  strength * dyeKinds[kindOf(dye)].inFill(figureOf(measuredDilution(dye.model.dye)), coldMl / 1000);

/** The strength of an amount of dye in a cold volume. */
export const strengthOf = (dye: MixDye, amount: number, coldMl: number): number =>
  amount / amountOf(dye, 1, coldMl);

/** What to pour for dyes of some strengths in a cold volume; concentrates take room, water fills up. */
export function pouredFor(dyes: readonly MixDye[], strengths: ArrayLike<number>, coldMl: number): Poured {
  const room = dyes.reduce((sum, { share }, i) => sum + share * strengths[i]!, 0);
  return {
    dyes: dyes.map((dye, i) => ({
      name: dye.name,
      kind: kindOf(dye),
      amount: amountOf(dye, strengths[i]!, coldMl),
    })),
    waterMl: Math.max(0, coldMl * (1 - room)),
    coldMl,
  };
}

/** Least amounts that can be measured: 0.5 mL; 0.1 g of powder, common practice, no source. */
const least: Readonly<Record<DyeKind, number>> = { liquid: 0.5, powder: 0.1 };

/** Whether so little of a dye is in a bath that it is left out. */
export const tooLittle = (dye: MixDye, strength: number, coldMl: number): boolean =>
  amountOf(dye, strength, coldMl) < least[kindOf(dye)];
