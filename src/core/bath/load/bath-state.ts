/** A bath's liquor and the dye in it. */
export interface BathState {
  /** Measured hot. */
  readonly volumeL: number;
  /** mL of concentrate or g of powder. */
  readonly dye: number;
}
