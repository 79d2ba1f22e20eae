/** (exp(z) - 1)/z, 1 at 0. */
const growth = (z: number): number => (Math.abs(z) < 1e-12 ? 1 : Math.expm1(z) / z);

/**
 * Strength that a bath is left with after an area is dyed, loads small beside the bath; 1 at the start.
 *
 * Per dm², parts take u [mL or g], liquor δ [L] drains off with the strength m of the bath [mL/L or g/L], e [L]
 * evaporates. Not refilled: V dm/dA = e m - u, V = V₀ - (δ + e) A. Filled up with liquor of strength m':
 * V dm/dA = (δ + e) m' - u - δ m. With dτ = dA/V both are dm/dτ = p + q m, so
 * m = m₀ exp(q τ) + p (exp(q τ) - 1)/q. NaN where the bath would be dry.
 * @example
 * spentStrength({ volumeL: 6, dyePerL: 100, areaDm2: 1000, takenUpPerDm2: 0.03, dragOutLPerDm2: 0, evaporationLPerDm2: 0, refill: "none" }) // => 0.95
 * spentStrength({ volumeL: 6, dyePerL: 100, areaDm2: 1000, takenUpPerDm2: 0, dragOutLPerDm2: 0.001, evaporationLPerDm2: 0.002, refill: "water" }) // => 0.846481724890614
 * spentStrength({ volumeL: 6, dyePerL: 100, areaDm2: 1000, takenUpPerDm2: 0, dragOutLPerDm2: 0.001, evaporationLPerDm2: 0.002, refill: "none" }) // => 1.587401
 */
export function spentStrength(bath: {
  readonly volumeL: number;
  readonly dyePerL: number;
  readonly areaDm2: number;
  readonly takenUpPerDm2: number;
  readonly dragOutLPerDm2: number;
  readonly evaporationLPerDm2: number;
  readonly refill: "none" | "water" | "fresh";
}): number {
  const { volumeL, areaDm2, dragOutLPerDm2, evaporationLPerDm2, refill } = bath;
  const lostLPerDm2 = dragOutLPerDm2 + evaporationLPerDm2;
  const taken = bath.takenUpPerDm2 / bath.dyePerL;
  const [turnover, p, q] =
    refill === "none"
      ? [drained(lostLPerDm2, volumeL, areaDm2), -taken, evaporationLPerDm2]
      : [areaDm2 / volumeL, (refill === "fresh" ? lostLPerDm2 : 0) - taken, -dragOutLPerDm2];
  return Math.exp(q * turnover) + p * turnover * growth(q * turnover);
}

/** τ = ∫ dA/(V - r A). */
function drained(lostLPerDm2: number, volumeL: number, areaDm2: number): number {
  const share = (lostLPerDm2 * areaDm2) / volumeL;
  return lostLPerDm2 === 0 ? areaDm2 / volumeL : -Math.log1p(-share) / lostLPerDm2;
}
