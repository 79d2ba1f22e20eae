/** What the price leaves of a part: before tax, after the channel's fees. */
export interface Sale {
  /** Price before tax. */
  readonly netPrice: number;
  /** Share of the price before tax. */
  readonly fees: number;
  /** On the cost; 0 where absent. */
  readonly overhead?: number;
}

/**
 * What a good part leaves towards the fixed costs: price less fees less its own cost with overhead.
 * @example
 * contributionPerPart({ netPrice: 6, fees: 0.05, overhead: 0.1 }, 3) // => 2.40
 */
export const contributionPerPart = (
  { netPrice, fees, overhead = 0 }: Sale,
  variablePerPart: number,
): number => netPrice * (1 - fees) - variablePerPart * (1 + overhead);

/** Money that a colour costs however few parts are dyed with it. */
export interface ColourFixedCosts {
  /** All dye and water that the bath is made up with. */
  readonly makeUp: number;
  /** Labour of set-up and clean-up, consumables per bath. */
  readonly setUp: number;
  /** Heating up. */
  readonly heating: number;
  /** Getting rid of what is left. */
  readonly disposal: number;
}

export interface BreakEven {
  /** Good parts that pay for the colour. */
  readonly parts: number;
  readonly fixed: number;
  readonly contributionPerPart: number;
}

/**
 * Good parts of a colour that must be sold before it pays: fixed costs with overhead over what each part leaves.
 *
 * The dye of the make-up is fixed, so only dye that is added later belongs to a part's own cost. Undefined
 * where a part leaves nothing, so that no quantity pays. Common practice, no source.
 * @example
 * breakEven({ makeUp: 27.6, setUp: 17, heating: 0.3, disposal: 3.6 }, { netPrice: 6, fees: 0.05 }, 3.2).parts // => 20
 * breakEven({ makeUp: 27.6, setUp: 17, heating: 0.3, disposal: 3.6 }, { netPrice: 3, fees: 0.05 }, 3.2) // => undefined
 */
export function breakEven(
  costs: ColourFixedCosts,
  sale: Sale,
  variablePerPart: number,
): BreakEven | undefined {
  const contribution = contributionPerPart(sale, variablePerPart);
  const fixed = costs.makeUp + costs.setUp + costs.heating + costs.disposal;
  const parts = (fixed * (1 + (sale.overhead ?? 0))) / contribution;
  if (!(contribution > 0 && parts < Number.MAX_SAFE_INTEGER)) return undefined;
  // A quotient that arithmetic left a hair above a whole number is that number.
  return { parts: Math.ceil(parts * (1 - 1e-12)), fixed, contributionPerPart: contribution };
}
