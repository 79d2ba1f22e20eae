import { heatMemory } from "../../bath/heat/tank-heat.js";
import { aimMemory, dyeMemory } from "../../uptake/swatches/dye-memory.js";
import type { WorkMemory } from "./work-batch.js";

/** All that can be remembered over many batches or draws of one workshop; results stay the same. */
export const planMemory = (): Required<WorkMemory> => ({
  modelOf: dyeMemory(),
  aimOf: aimMemory(),
  heatOf: heatMemory(),
});
