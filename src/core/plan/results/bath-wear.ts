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
import type { BathLives } from "../run/bath-lives.js";
import type { BathRun } from "../run/bath-run.js";
import type { BathWear, CoverHeat, LongerDrain, SteadyTopUpFigures, WearHeat } from "../wear-model.js";
import { dyeBalance } from "./dye-balance.js";

/** How one bath wears. */
export function bathWear(batch: Batch, run: BathRun, lives: BathLives): BathWear {
  const { loads, end, bath } = run;
  const restsOnAssumed = bathRestsOn(bath.dye, batch.handling);
  return {
    bath: bath.index,
    tank: bath.tank.name,
    dye: bath.dye.name,
    celsius: bath.dye.celsius,
    volumeL: bath.tank.volumeL,
    topUpRule: bath.topUp,
    after: bath.after,
    portions: mapped(run.portions, ({ order, part, parts }, i) => ({
      part: part.name,
      shade: order.shade.name,
      base: order.base?.name ?? null,
      parts,
      freshDipSeconds: lives.freshDipSeconds[i]!,
    })),
    heating: run.heating,
    energyBalance: run.energy,
    dyeBalance: dyeBalance(run, restsOnAssumed),
    lives: lives.all,
    cheapestRule: lives.cheapestRule,
    trace: lives.own.trace,
    dyeFate: {
      ...dyeFate({
        takenUp: exactSumOf(loads, ({ result }) => result.takenUp),
        draggedOut: exactSumOf(loads, ({ result }) => result.draggedOut),
        left: end.dye,
      }),
      restsOnAssumed,
    },
    steadyTopUp: steadyOf(batch, run),
    longerDrain: drainOf(batch, run, lives),
    heat: heatOf(batch, run),
    restsOnAssumed,
  };
}

function heatOf(batch: Batch, { bath }: BathRun): WearHeat {
  const { warmUp, now, variants } = heatReport(bath.tank, bath.dye.celsius, batch.room);
  const under = ({ cover, minutes, kWh, dipping, covered }: HeatVariant): CoverHeat => ({
    cover,
    minutes,
    kWh,
    lidOff: dipping,
    lidOn: covered,
  });
  return {
    warmUp,
    ...under(now),
    otherCovers: mapped(
      variants.filter(({ cover, insulation }) => cover !== now.cover && insulation === now.insulation),
      under,
    ),
  };
}

function steadyOf(batch: Batch, run: BathRun): SteadyTopUpFigures | null {
  const { dye } = run.bath;
  const found = steadyTopUp(
    run.setting,
    mapped(run.loads, ({ plan }) => plan),
  );
  if (found === undefined) return null;
  const { strength, dilution } = found;
  const common = {
    strength,
    dilution: dilution === undefined ? null : dilutionInWords(dilution),
    mlPerLoad: exactSumOf(found.loads, ({ coldMl }) => coldMl) / found.loads.length,
    pours: mapped(found.loads, (load) => ({
      ...dyeFigures(dye.dilution.kind, { amount: load.dye }),
      liquorMl: load.coldMl,
      waterMl: load.waterMl,
    })),
    restsOnAssumed: bathRestsOn(dye, batch.handling),
  };
  return { ...common, ...(dilution === undefined ? { fraction: null } : keyedFigure(dilution)) };
}

/** Draining longer than now, as far as it is looked at [s]. Common practice, no source. */
const longerBySeconds = 10;

/**
 * Colour goes on deepening while a part drips, so that a changed drain voids the swatches; under this dip it is not worth
 * that [s]. Common practice, no source.
 */
const drainMattersUnder = 60;

/**
 * Parts are taken to hang as square plates of their area, sqrt(A/2) high, which decides only the lower end of the
 * estimate. Common practice, no source.
 */
function drainOf(batch: Batch, run: BathRun, { own }: BathLives): LongerDrain | null {
  const { rates, handling } = batch;
  const { dye } = run.bath;
  const fromSeconds = handling.drainSeconds;
  const toSeconds = Math.min(drainEndSeconds, fromSeconds + longerBySeconds);
  if (run.loads.some(({ result }) => result.dipSeconds < drainMattersUnder)) return null;
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
