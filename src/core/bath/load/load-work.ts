import type { Part } from "../../model/batch.js";

/** What a load asks of the bath: so many parts of one kind, to one depth. */
export interface LoadWork {
  readonly part: Pick<
    Part,
    "massG" | "areaDm2" | "volumeCm3" | "perLoad" | "boxMm" | "dragOutMlPerDm2" | "heatCapacityKjPerKgK"
  >;
  readonly parts: number;
  readonly depth: number;
  /** The time that gives the depth in a fresh bath at the temperature that the dye was measured at. */
  readonly freshSeconds: number;
}

/** Heat capacity of a load [J/K]. */
export const loadJPerK = ({ part, parts }: Pick<LoadWork, "part" | "parts">): number =>
  parts * part.massG * part.heatCapacityKjPerKgK;
