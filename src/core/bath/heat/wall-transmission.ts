/** What heat passes on its way through a wall: films of liquor and air outside, layers between. */
export interface Wall {
  /** Film coefficient inside and outside [W/(m² K)]. */
  readonly insideWPerM2K: number;
  readonly outsideWPerM2K: number;
  readonly layers: readonly { readonly mm: number; readonly wPerMK: number }[];
}

/**
 * Heat that a flat wall passes per area and kelvin between liquor and air [W/(m² K)]: 1/(1/h_in + Σ d/k + 1/h_out).
 *
 * h film coefficients [W/(m² K)], d thickness, here in mm, k conductivity [W/(m K)]. Steady state, no edges.
 * The film of air decides for a bare metal wall, and the insulation for an insulated one.
 * @source steelTankExercise
 * @example
 * wallTransmission({ insideWPerM2K: 2850, outsideWPerM2K: 10, layers: [{ mm: 12, wPerMK: 50 }] }) // => 9.94126
 */
export function wallTransmission({ insideWPerM2K, outsideWPerM2K, layers }: Wall): number {
  let resistance = 1 / insideWPerM2K + 1 / outsideWPerM2K;
  for (const { mm, wPerMK } of layers) resistance += mm / 1000 / wPerMK;
  return 1 / resistance;
}
