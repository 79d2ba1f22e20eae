/**
 * Akaike's criterion for least squares, corrected for few points: the smaller, the better a law for its
 * number of parameters.
 *
 * n ln(S/n) + 2 K + 2 K (K + 1)/(n - K - 1); S residual sum, n points, K fitted parameters and one for the
 * variance. Undefined below K + 2 points. Compares laws on the same points only.
 * @source hurvichTsai1989 equation 3
 * @example
 * aicc({ residualSum: 25.990267, points: 6, parameters: 2 }) // => 26.796
 * aicc({ residualSum: 1, points: 4, parameters: 2 }) // => undefined
 */
export function aicc(fit: {
  readonly residualSum: number;
  readonly points: number;
  readonly parameters: number;
}): number | undefined {
  const k = fit.parameters + 1;
  const spare = fit.points - k - 1;
  if (spare < 1) return undefined;
  return fit.points * Math.log(fit.residualSum / fit.points) + 2 * k + (2 * k * (k + 1)) / spare;
}
