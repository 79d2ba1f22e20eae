/**
 * Concentration after a volume is filled up with water: C₁V₁/V₂, in the unit of C₁.
 * @source chemistry2e chapter 3
 * @example
 * dilutedConcentration(5, 0.85, 1.8) // => 2.361
 */
export const dilutedConcentration = (concentration: number, volume: number, toVolume: number): number =>
  (concentration * volume) / toVolume;

/**
 * Volume to which a solution is filled up to reach a weaker concentration: C₁V₁/C₂, in the unit of V₁.
 * @source chemistry2e chapter 3
 * @example
 * dilutedVolume(0.45, 11, 0.12) // => 41.25
 */
export const dilutedVolume = (concentration: number, volume: number, toConcentration: number): number =>
  (concentration * volume) / toConcentration;

/**
 * Volumes of a weaker and a stronger liquor that make up a total of a strength between them (alligation).
 *
 * Parts of the stronger = target - weaker, parts of the weaker = stronger - target. Undefined where the target
 * is not between the two. All strengths in one unit; plain water is 0.
 * @source pharmaceuticalCalculations
 * @example
 * alligation({ weaker: 50, stronger: 100, target: 70, total: 20 }) // => { weaker: 12, stronger: 8 }
 */
export function alligation(mix: {
  readonly weaker: number;
  readonly stronger: number;
  readonly target: number;
  readonly total: number;
}): { readonly weaker: number; readonly stronger: number } | undefined {
  const { weaker, stronger, target, total } = mix;
  if (!(weaker < stronger && weaker <= target && target <= stronger)) return undefined;
  const ofStronger = (total * (target - weaker)) / (stronger - weaker);
  return { weaker: total - ofStronger, stronger: ofStronger };
}

/**
 * Weaker liquor, or water at strength 0, to add to a volume so that a strength results.
 *
 * Undefined where the strength asked for is not above the weaker liquor's and at most the bath's.
 * @source pharmaceuticalCalculations
 * @example
 * weakerToAdd({ volume: 300, strength: 70, weaker: 0, target: 40 }) // => 225
 */
export function weakerToAdd(mix: {
  readonly volume: number;
  readonly strength: number;
  readonly weaker: number;
  readonly target: number;
}): number | undefined {
  const { volume, strength, weaker, target } = mix;
  if (!(weaker < target && target <= strength)) return undefined;
  return (volume * (strength - target)) / (target - weaker);
}
