import type { BathLife } from "../../bath/life/bath-life.js";
import { handsOnWait } from "../../bath/load/hands-on-wait.js";
import type { ColourUse } from "../../cost/price/colour-costs.js";
import { mapped } from "../../mapped.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch } from "../../model/batch.js";
import type { BathRun } from "./bath-run.js";
import { runRinsing } from "./run-rinsing.js";

function keptLife(life: BathLife | undefined): BathLife {
  if (life === undefined) throw new Error("the life of a kept bath was not worked");
  return life;
}

const lifeUse = ({ areaDm2, dyeLeft, dyeLeftEach, endedBy }: BathLife) => ({
  areaDm2,
  dyeLeft,
  dyeLeftEach,
  endedByDye: endedBy !== "shelf-life" && endedBy !== "load-limit",
});

/** What top-ups added of each dye of a mix, before the bath was heated and after its loads. */
export const addedEach = ({ setting, startTopUp, loads }: BathRun): readonly number[] =>
  (setting.fresh.dyeEach ?? []).map(
    (_, i) =>
      (startTopUp?.dyeEach?.[i] ?? 0) + exactSumOf(loads, ({ result }) => result.topUp?.dyeEach?.[i] ?? 0),
  );

/** A worked bath as the cost sheet sees it; the life of one that is dumped is not needed. */
export function bathUse(batch: Batch, run: BathRun, life: BathLife | undefined): ColourUse {
  const { bath, setting, heating, loads, end, freshWaterMl, startTopUp, energy } = run;
  return {
    batch,
    tank: bath.tank,
    dye: bath.dye,
    fresh: bath.start.kind === "fresh",
    loads: mapped(loads, ({ plan, result }) => ({
      order: plan.order.index,
      areaDm2: plan.areaDm2,
      dipSeconds: result.dipSeconds,
      cycleSeconds: result.cycleSeconds,
      handsOnWaitSeconds: handsOnWait(result.waitSeconds),
      takenUp: result.takenUp,
      draggedOut: result.draggedOut,
      ...(bath.dye.mix && { takenUpEach: result.takenUpEach, draggedOutEach: result.draggedOutEach }),
      parts: plan.parts,
      sizedByRatio: plan.boundBy === "liquorRatio",
      usualDragOut: plan.part.dragOutMlPerDm2 === undefined,
    })),
    heatingKwh: heating.kWh ?? 0,
    workingKwh: energy.heaterKwh - (heating.kWh ?? 0),
    hotSeconds:
      60 * (heating.minutes ?? 0) +
      exactSumOf(loads, ({ result }) => result.waitSeconds + result.cycleSeconds),
    rinseLitres: runRinsing(batch, run).litres,
    makeUpWaterMl: freshWaterMl,
    topUpWaterMl: (startTopUp?.waterMl ?? 0) + exactSumOf(loads, ({ result }) => result.topUp?.waterMl ?? 0),
    topUpDye: (startTopUp?.dye ?? 0) + exactSumOf(loads, ({ result }) => result.topUp?.dye ?? 0),
    topUpDyeEach: bath.dye.mix && addedEach(run),
    freshDyeEach: setting.fresh.dyeEach,
    dyeLeftEach: end.dyeEach,
    freshDye: setting.fresh.dye,
    dyeLeft: end.dye,
    life: bath.after === "keep" ? lifeUse(keptLife(life)) : undefined,
  };
}
