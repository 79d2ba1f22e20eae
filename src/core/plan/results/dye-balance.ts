import { exactSumOf } from "../../maths/exact-sum.js";
import { dyeFigures } from "../../quantity/dye/dye-figures.js";
import type { PlanDyeBalance } from "../plan-model.js";
import type { BathRun, LoadResult } from "../run/bath-run.js";
import { addedEach } from "../run/bath-use.js";
import { mixFigures } from "./mix-figures.js";

/** Where the dye of a bath came from and went. */
export function dyeBalance(run: BathRun, restsOnAssumed: PlanDyeBalance["restsOnAssumed"]): PlanDyeBalance {
  const sum = (of: (result: LoadResult) => number): number =>
    exactSumOf(run.loads, ({ result }) => of(result));
  const sumEach = (of: (result: LoadResult) => readonly number[]): number[] =>
    (run.start.dyeEach ?? []).map((_, i) => sum((result) => of(result)[i]!));
  return {
    ...dyeFigures(run.bath.dye.dilution.kind, {
      start: run.start.dye,
      added: (run.startTopUp?.dye ?? 0) + sum((result) => result.topUp?.dye ?? 0),
      takenUp: sum((result) => result.takenUp),
      draggedOut: sum((result) => result.draggedOut),
      left: run.end.dye,
    }),
    ...mixFigures(run.bath.dye, {
      start: run.start.dyeEach ?? [],
      added: addedEach(run),
      takenUp: sumEach((result) => result.takenUpEach),
      draggedOut: sumEach((result) => result.draggedOutEach),
      left: run.end.dyeEach ?? [],
    }),
    restsOnAssumed,
  };
}
