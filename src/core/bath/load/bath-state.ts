/**
 * One load on a bath, as four tiny moves. Each gives the bath after it; what passed the tank's edge is the
 * difference, so that dye balances: start + added = taken up + dragged out + left.
 */
export interface BathState {
  /** Measured hot. */
  readonly volumeL: number;
  /** mL of concentrate or g of powder. */
  readonly dye: number;
}

/** What is poured in: filled up to a volume, with dye by the litre poured or altogether. */
export type Pour = { readonly toVolumeL: number } & ({ readonly dyePerL: number } | { readonly dye: number });

/**
 * Parts take that much dye.
 * @example
 * takeUp({ volumeL: 6, dye: 600 }, 24) // => { volumeL: 6, dye: 576 }
 */
export const takeUp = (bath: BathState, amount: number): BathState => ({
  volumeL: bath.volumeL,
  dye: bath.dye - amount,
});

/**
 * Liquor leaves on the parts, with the dye it holds.
 * @example
 * dragOut({ volumeL: 6, dye: 600 }, 0.03) // => { volumeL: 5.97, dye: 597 }
 */
export const dragOut = (bath: BathState, volumeL: number): BathState => ({
  volumeL: bath.volumeL - volumeL,
  dye: bath.dye - bath.dye * (volumeL / bath.volumeL),
});

/**
 * Water leaves as vapour; dye stays.
 * @example
 * evaporate({ volumeL: 6, dye: 600 }, 0.5) // => { volumeL: 5.5, dye: 600 }
 */
export const evaporate = (bath: BathState, volumeL: number): BathState => ({
  volumeL: bath.volumeL - volumeL,
  dye: bath.dye,
});

/**
 * Fills the bath up to a volume; a bath fuller than that keeps its volume. With `dyePerL: 0` it is plain water.
 * @example
 * refill({ volumeL: 5, dye: 500 }, { toVolumeL: 6, dyePerL: 100 }) // => { volumeL: 6, dye: 600 }
 * refill({ volumeL: 5, dye: 500 }, { toVolumeL: 6, dye: 150 }) // => { volumeL: 6, dye: 650 }
 */
export function refill(bath: BathState, pour: Pour): BathState {
  const pouredL = Math.max(0, pour.toVolumeL - bath.volumeL);
  return {
    volumeL: Math.max(pour.toVolumeL, bath.volumeL),
    dye: bath.dye + ("dye" in pour ? pour.dye : pouredL * pour.dyePerL),
  };
}
