import type { Order, Pricing } from "../../model/batch.js";
import { equalProfitSurcharge } from "./equal-profit.js";

/** The same part on another base, dyed at the same cost. */
export interface OtherBase {
  readonly base: string;
  readonly costPerPart: number;
  /** What the price before tax of the ordered base must lie above this one's for the same profit; null without pricing. */
  readonly surcharge: number | null;
}

/** What an order's part would cost on each other base that its blank has a price for. */
export function otherBases(
  { part: { blank }, base }: Order,
  {
    costPerPart,
    started,
    quantity,
  }: { readonly costPerPart: number | null; readonly started: number; readonly quantity: number },
  pricing: Pricing | undefined,
): OtherBase[] {
  if (costPerPart === null || typeof blank === "number" || blank === undefined || !base) return [];
  const own = blank.get(base.name);
  if (own === undefined) return [];
  return [...blank]
    .filter(([name]) => name !== base.name)
    .map(([name, each]) => {
      const other = costPerPart + ((each - own) * started) / quantity;
      return {
        base: name,
        costPerPart: other,
        surcharge: pricing ? equalProfitSurcharge({ costPerPart, other, ...pricing }) : null,
      };
    });
}
