import { loadsPerFilling, looseLimit, rinsesEnough } from "../../bath/rinse/enough-rinses.js";
import { type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import { largest } from "../../maths/extent.js";
import type { Batch } from "../../model/batch.js";
import { percentText } from "../../quantity/text/percent-text.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { BathRun } from "../run/bath-run.js";
import { rinsedLoads, runRinsing } from "../run/run-rinsing.js";

/** The warning on parts that leave their rinses with loose dye, with what would bring it down. */
export function rinseFaults(batch: Batch, runs: readonly BathRun[]): Fault[] {
  const { rinses, rinseWaterL, rinseEvery } = batch.handling;
  const loose = runs
    .map((run) => ({ run, looseShare: runRinsing(batch, run).looseShare }))
    .filter(({ looseShare }) => looseShare >= looseLimit);
  if (loose.length === 0) return [];
  const worst = largest(mapped(loose, ({ looseShare }) => looseShare));
  const loads = mapped(loose, ({ run }) => rinsedLoads(run));
  const needed = loads.map((one) => rinsesEnough(one, { waterL: rinseWaterL, every: rinseEvery }) ?? 0);
  const enough = needed.includes(0) ? undefined : Math.max(...needed);
  const every = Math.min(...loads.map((one) => loadsPerFilling(one, { rinses, waterL: rinseWaterL })));
  const ways = [
    ...(enough === undefined ? [] : [`write rinses: ${enough} under handling`]),
    ...(rinseEvery > 1 && every > 0
      ? [`change the water every ${every === 1 ? "load" : `${every} loads`}`]
      : []),
  ];
  return [
    warning(
      "rinse-short",
      ["handling", "rinses"],
      `after ${rinses === 1 ? "one rinse" : `${rinses} rinses`} in ${shortNumber(rinseWaterL)} L, ${percentText(worst)} of the dye on the parts of ${[...new Set(loose.map(({ run }) => `"${run.bath.dye.name}"`))].join(", ")} is still loose and may stain`,
      ways.length === 0 ? "rinse in more water" : `for less than 1 %, ${ways.join(" or ")}`,
    ),
  ];
}
