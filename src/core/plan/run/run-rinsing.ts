import type { RinsedLoad } from "../../bath/rinse/rinse-loads.js";
import { type Rinsing, rinseLoads } from "../../bath/rinse/rinse-loads.js";
import { mapped } from "../../mapped.js";
import type { Batch } from "../../model/batch.js";
import type { BathRun } from "./bath-run.js";

/** The loads of a bath as its rinses get them. */
export const rinsedLoads = ({ loads }: Pick<BathRun, "loads">): RinsedLoad[] =>
  mapped(loads, ({ result }) => ({
    dragOutL: result.draggedOutL,
    dyePerL: result.dyePerLOut,
    takenUp: result.takenUp,
  }));

/** What the rinses of a bath take in water and dye, and leave loose; one filling goes on across its orders. */
export const runRinsing = ({ handling }: Pick<Batch, "handling">, run: Pick<BathRun, "loads">): Rinsing =>
  rinseLoads(rinsedLoads(run), {
    rinses: handling.rinses,
    waterL: handling.rinseWaterL,
    every: handling.rinseEvery,
  });
