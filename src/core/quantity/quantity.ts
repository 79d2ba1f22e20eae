/** A number in the unit that was asked for, as read from a text such as "0.8 mL/dm2 ± 40 %". */
export interface Quantity {
  readonly value: number;
  /** Half width of the 95 % interval, in the same unit. */
  readonly plusMinus?: number;
  /** As read, where it was read in a US measure: "2 US gal". */
  readonly customary?: string;
}
