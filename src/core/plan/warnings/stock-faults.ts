import { type Fault, warning } from "../../fault.js";
import type { Batch } from "../../model/batch.js";
import { dyeInWords } from "../../quantity/dye/dye-figures.js";
import type { BathRun } from "../run/bath-run.js";

const addedDye = (run: BathRun): number =>
  (run.startTopUp?.dye ?? 0) + run.loads.reduce((sum, { result }) => sum + (result.topUp?.dye ?? 0), 0);

/** Dyes of which the batch needs more than is on the shelf. */
export function stockFaults(batch: Batch, runs: readonly BathRun[]): Fault[] {
  return batch.dyes.flatMap((dye) => {
    if (dye.stock === undefined) return [];
    const needed = runs
      .filter((run) => run.bath.dye === dye)
      .reduce((sum, run) => sum + (run.bath.start.kind === "fresh" ? run.start.dye : 0) + addedDye(run), 0);
    if (needed <= dye.stock) return [];
    const said = (amount: number): string => dyeInWords(dye.dilution.kind, amount);
    return [
      warning(
        "stock-short",
        ["dyes", dye.name, "stock"],
        `dye "${dye.name}": ${said(needed)} needed, ${said(dye.stock)} on the shelf`,
        `order at least ${said(Math.ceil(needed - dye.stock))}`,
      ),
    ];
  });
}
