/** A bath's liquor and the dye in it. */
export interface BathState {
  /** Measured hot. */
  readonly volumeL: number;
  /** mL of concentrate or g of powder. */
  readonly dye: number;
  /** Of a mix each, in the order of its recipe; `dye` is their sum. */
  readonly dyeEach?: readonly number[] | undefined;
}
