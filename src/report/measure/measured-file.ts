import type { Fault } from "../../core/fault.js";
import type { MeshMeasure } from "../../core/part/mesh-measure.js";
import type { PartInTank } from "../../core/plan/assign/part-in-tank.js";

/** A part in a tank; no load size where volume and mass cannot be trusted, and no drag-out where the area cannot. */
export type MeasuredInTank = Omit<PartInTank, "partsPerLoad" | "boundBy" | "carriedOutMl"> & {
  readonly carriedOutMl: number | null;
  readonly partsPerLoad: number | null;
  readonly boundBy: PartInTank["boundBy"] | null;
};

/** A model file that was measured. */
export interface MeasuredFile {
  readonly file: string;
  readonly model: MeshMeasure;
  readonly warnings: readonly Fault[];
  readonly inTank?: MeasuredInTank;
}
