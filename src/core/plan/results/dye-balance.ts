import { exactSumOf } from "../../maths/exact-sum.js";
import { dyeFigures } from "../../quantity/dye/dye-figures.js";
import type { PlanDyeBalance } from "../plan-model.js";
import type { BathRun, LoadResult } from "../run/bath-run.js";

/** Where the dye of a bath came from and went. */
export function dyeBalance(run: BathRun, restsOnAssumed: PlanDyeBalance["restsOnAssumed"]): PlanDyeBalance {
  const sum = (of: (result: LoadResult) => number): number =>
    exactSumOf(run.loads, ({ result }) => of(result));
  return {
    ...dyeFigures(run.bath.dye.dilution.kind, {
      start: run.start.dye,
      added: (run.startTopUp?.dye ?? 0) + sum((result) => result.topUp?.dye ?? 0),
      takenUp: sum((result) => result.takenUp),
      draggedOut: sum((result) => result.draggedOut),
      left: run.end.dye,
    }),
    restsOnAssumed,
  };
}
