import { type HeatVariant, heatReport } from "../../bath/heat/heat-report.js";
import { drainSaves, dyeFate } from "../../bath/life/dye-fate.js";
import { steadyTopUp } from "../../bath/life/steady-top-up.js";
import { drainEndSeconds, longerDrain, type Range } from "../../bath/rinse/longer-drain.js";
import { mapped } from "../../mapped.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch } from "../../model/batch.js";
import { bathRestsOn } from "../../model/rests-on.js";
import { dilutionInWords, keyedFigure } from "../../quantity/dye/dilution.js";
import { dyeFigures } from "../../quantity/dye/dye-figures.js";
import type { PlanBath, PlanHeating, PlanLongerDrain, PlanSteadyTopUp } from "../plan-model.js";
import { type BathLives, mixOf } from "../run/bath-lives.js";
import type { BathRun } from "../run/run-bath.js";

/** What a plan says of a bath beyond what it must do: how it could be done otherwise. */
export interface BathAdvice extends Pick<PlanBath, "dyeFate" | "steadyTopUp" | "longerDrain"> {
  readonly heat: Pick<PlanHeating, "warmUp" | "lidOff" | "lidOn" | "otherCovers">;
}

export const noAdvice: BathAdvice = { heat: {}, dyeFate: null, steadyTopUp: null, longerDrain: null };

export function bathAdvice(batch: Batch, run: BathRun, lives: BathLives): BathAdvice {
  const { loads, end, bath } = run;
  return {
    heat: heatAdvice(batch, run),
    dyeFate: {
      ...dyeFate({
        takenUp: exactSumOf(loads, ({ result }) => result.takenUp),
        draggedOut: exactSumOf(loads, ({ result }) => result.draggedOut),
        left: end.dye,
      }),
      restsOnAssumed: bathRestsOn(bath.dye, batch.handling),
    },
    steadyTopUp: steadyOf(batch, run),
    longerDrain: drainOf(batch, run, lives),
  };
}

function heatAdvice(batch: Batch, { bath }: BathRun): BathAdvice["heat"] {
  const { warmUp, now, variants } = heatReport(bath.tank, bath.dye.celsius, batch.room);
  const holding = ({ dipping, covered }: HeatVariant) => ({ lidOff: dipping, lidOn: covered });
  return {
    warmUp,
    ...holding(now),
    otherCovers: mapped(
      variants.filter(({ cover, insulation }) => cover !== now.cover && insulation === now.insulation),
      (variant) => ({
        cover: variant.cover,
        minutes: variant.minutes,
        kWh: variant.kWh,
        ...holding(variant),
      }),
    ),
  };
}

function steadyOf(batch: Batch, run: BathRun): PlanSteadyTopUp | null {
  const { dye } = run.bath;
  const found = steadyTopUp(run.setting, mixOf(run));
  if (found === undefined) return null;
  const { strength, dilution } = found;
  const common = {
    strength,
    dilution: dilution === undefined ? null : dilutionInWords(dilution),
    pours: mapped(found.loads, (load) => ({
      ...dyeFigures(dye.dilution.kind, { amount: load.dye }),
      liquorMl: load.coldMl,
      waterMl: load.waterMl,
    })),
    restsOnAssumed: bathRestsOn(dye, batch.handling),
  };
  return { ...common, ...(dilution === undefined ? { fraction: null } : keyedFigure(dilution)) };
}

/** Draining longer than now, as far as it is looked at [s]. */
const longerBySeconds = 10;

/**
 * Parts are taken to hang as square plates of their area, sqrt(A/2) high, which decides only the lower end of the
 * estimate. Common practice, no source.
 */
function drainOf(batch: Batch, run: BathRun, { own }: BathLives): PlanLongerDrain | null {
  const { rates, handling } = batch;
  const { dye } = run.bath;
  const fromSeconds = handling.drainSeconds;
  const toSeconds = Math.min(drainEndSeconds, fromSeconds + longerBySeconds);
  if (toSeconds <= fromSeconds || own.loads === 0 || handling.dragOutMlPerDm2 === 0) return null;
  const heightDm = Math.sqrt(
    exactSumOf(run.loads, ({ plan }) => plan.areaDm2) / exactSumOf(run.loads, ({ plan }) => plan.parts) / 2,
  );
  const saving = longerDrain({
    dragOutMlPerDm2: handling.dragOutMlPerDm2,
    fromSeconds,
    toSeconds,
    celsius: dye.celsius,
    heightDm,
  });
  const saves = drainSaves({ draggedOut: own.draggedOut, loads: own.loads }, saving);
  const scaled = ({ low, high }: Range, by: number): Range => ({ low: low * by, high: high * by });
  const dyePerLoad = scaled(saves.dye, 1 / own.loads);
  const minutesPerLoad = saves.minutes / own.loads;
  return {
    ...saving,
    estimate: true,
    fromSeconds,
    toSeconds,
    dyePerLoad,
    minutesPerLoad,
    savedPerLoad: dye.price === undefined ? null : scaled(dyePerLoad, dye.price / 1000),
    labourPerLoad: rates.labourPerHour === undefined ? null : (rates.labourPerHour * minutesPerLoad) / 60,
    restsOnAssumed: bathRestsOn(dye, handling),
  };
}
