/** A number in the requested unit, read from a text such as "0.8 mL/dm2 ± 40 %". */
export interface Quantity {
  readonly value: number;
  /** Half width of the 95 % interval, in the same unit. */
  readonly plusMinus?: number;
  /** As written, if in a US measure: "2 US gal". */
  readonly customary?: string;
}
