import type { Part } from "../../model/batch.js";
import type { MixedAim } from "./mixed-dip.js";

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
  /** In a bath of several dyes, whose colours wear apart: the dip is found for how strong each is. */
  readonly mixed?: MixedAim | undefined;
}

/** Heat capacity of a load [J/K]. */
export const loadJPerK = ({ part, parts }: Pick<LoadWork, "part" | "parts">): number =>
  parts * part.massG * part.heatCapacityKjPerKgK;
