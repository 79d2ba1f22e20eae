import { type Fault, warning } from "../../fault.js";
import type { Batch, Dye } from "../../model/batch.js";
import { dyesOf } from "../../model/dyes-of.js";
import { dyeInWords } from "../../quantity/dye/dye-figures.js";
import type { BathRun } from "../run/bath-run.js";
import { addedEach } from "../run/bath-use.js";

const addedDye = (run: BathRun): number =>
  (run.startTopUp?.dye ?? 0) + run.loads.reduce((sum, { result }) => sum + (result.topUp?.dye ?? 0), 0);

/** What a bath needs of a dye, alone or in a mix. */
function neededOf(run: BathRun, dye: Dye): number {
  const at = dyesOf(run.bath.dye).findIndex(({ name }) => name === dye.name);
  if (at < 0) return 0;
  const fresh = run.bath.start.kind === "fresh";
  return run.bath.dye.mix === undefined
    ? (fresh ? run.start.dye : 0) + addedDye(run)
    : (fresh ? run.start.dyeEach![at]! : 0) + addedEach(run)[at]!;
}

/** Dyes of which the batch needs more than is on the shelf. */
export function stockFaults(batch: Batch, runs: readonly BathRun[]): Fault[] {
  return batch.dyes.flatMap((dye) => {
    if (dye.stock === undefined) return [];
    const needed = runs.reduce((sum, run) => sum + neededOf(run, dye), 0);
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
