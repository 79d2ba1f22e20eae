/**
 * K/S of a base under several dyes, single-constant: K/S = K/S_base + Σ A_i D_i at each wavelength.
 *
 * No competition for the fibre's places; D_i depth of dye i [-], A_i K/S of its depth 1. Written into `ks`.
 * @source allen1966 single-constant mixture of colorants
 * @example
 * mixedKs([0.02], [[0.04], [0.02], [0.9]], [0.5, 0.3, 0.2])[0] // => 0.226
 */
export function mixedKs(
  baseKs: ArrayLike<number>,
  absorptions: readonly ArrayLike<number>[],
  depths: ArrayLike<number>,
  ks: Float64Array = new Float64Array(baseKs.length),
): Float64Array {
  for (let i = 0; i < ks.length; i++) ks[i] = baseKs[i]!;
  for (let j = 0; j < absorptions.length; j++) {
    const absorption = absorptions[j]!;
    const depth = depths[j]!;
    for (let i = 0; i < ks.length; i++) ks[i]! += absorption[i]! * depth;
  }
  return ks;
}

/**
 * Shares of the K/S that each dye adds, over the mean of all wavelengths: D_i mean(A_i)/Σ D_j mean(A_j); zeros where
 * nothing is added.
 * @example
 * addedShares([2, 1], [1, 2]) // => [0.5, 0.5]
 * addedShares([2, 1], [0, 0]) // => [0, 0]
 */
export function addedShares(meanAbsorptions: readonly number[], depths: readonly number[]): number[] {
  const added = meanAbsorptions.map((mean, i) => mean * depths[i]!);
  const total = added.reduce((sum, value) => sum + value, 0);
  return added.map((value) => (total > 0 ? value / total : 0));
}
