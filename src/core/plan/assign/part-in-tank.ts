import { type LoadLimit, loadSize } from "../../bath/load/load-size.js";
import type { Handling, Part, Tank } from "../../model/batch.js";
import type { RestsOn } from "../../model/rests-on.js";

/** What one kind of part means for a tank. */
export interface PartInTank {
  readonly tank: string;
  /** The most that a load may hold, and which limit says so. */
  readonly partsPerLoad: number;
  readonly boundBy: LoadLimit;
  /** Liquor that one part carries out. */
  readonly carriedOutMl: number;
  readonly dragOutMlPerDm2: number;
  readonly restsOnAssumed: RestsOn;
}

/**
 * Parts a load in a tank, and liquor that one part carries out: drag-out x wetted area, mL = mL/dm2 x dm2.
 * @example
 * partInTank({ massG: 6, volumeCm3: 6, areaDm2: 0.4 }, { name: "six", volumeL: 6, capacityL: 7.2 }, { freeboard: 0.05, liquorRatioLPerKg: 20, dragOutMlPerDm2: 0.8, dragOutAssumed: true }).carriedOutMl // => 0.32
 */
export function partInTank(
  part: Pick<Part, "massG" | "volumeCm3" | "areaDm2" | "boxMm" | "dragOutMlPerDm2">,
  tank: Pick<Tank, "name" | "volumeL" | "capacityL" | "leastL">,
  handling: Pick<Handling, "freeboard" | "liquorRatioLPerKg" | "dragOutMlPerDm2" | "dragOutAssumed">,
): PartInTank {
  const { parts, boundBy } = loadSize(part, tank, handling);
  const dragOutMlPerDm2 = part.dragOutMlPerDm2 ?? handling.dragOutMlPerDm2;
  const dragOutAssumed = part.dragOutMlPerDm2 === undefined && handling.dragOutAssumed;
  return {
    tank: tank.name,
    partsPerLoad: parts,
    boundBy,
    carriedOutMl: dragOutMlPerDm2 * part.areaDm2,
    dragOutMlPerDm2,
    restsOnAssumed: dragOutAssumed ? ["dragOut"] : [],
  };
}
