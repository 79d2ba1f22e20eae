import { rinsesEnough } from "../../bath/rinse/enough-rinses.js";
import { mapped } from "../../mapped.js";
import type { Batch, Bath, Dye } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { bathRestsOn } from "../../model/rests-on.js";
import { dilutionInWords, keyedFigure } from "../../quantity/dye/dilution.js";
import { type DyeAmount, dyeFigures } from "../../quantity/dye/dye-figures.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import { trialAdvice } from "../advice/trial-advice.js";
import type { PlanBath, PlanLoad, PlanRinse, PlanStart } from "../plan-model.js";
import type { BathLives } from "../run/bath-lives.js";
import type { BathRun, LoadResult } from "../run/bath-run.js";
import { loadSlope, loadWindow } from "../run/load-window.js";
import { rinsedLoads, runRinsing } from "../run/run-rinsing.js";
import { carryOver } from "./carry-over.js";
import { dyeBalance } from "./dye-balance.js";
import { mixFigures, mixInWords } from "./mix-figures.js";

function rinseOf(batch: Batch, run: BathRun, restsOnAssumed: PlanRinse["restsOnAssumed"]): PlanRinse {
  const { rinses, rinseEvery, rinseWaterL } = batch.handling;
  const { litres, looseShare, dyeToWaste } = runRinsing(batch, run);
  return {
    rinses,
    every: rinseEvery,
    litres,
    looseShare,
    rinsesEnough: rinsesEnough(rinsedLoads(run), { waterL: rinseWaterL, every: rinseEvery }) ?? null,
    ...dyeFigures(run.bath.dye.dilution.kind, { rinsed: dyeToWaste }),
    restsOnAssumed,
  };
}

/** Each dye of a mix in a load. */
function loadMix(dye: Dye, result: LoadResult): Pick<PlanLoad, "mix"> {
  const { mix } = mixFigures(dye, { takenUp: result.takenUpEach });
  return mix === undefined
    ? {}
    : {
        mix: mapped(mix, (one, i) => ({
          ...one,
          depth: result.mixedDip!.depths[i]!,
          strengthBefore: result.strengthBeforeEach[i]!,
          strengthAfter: result.strengthAfterEach[i]!,
        })),
      };
}

/** The start of a bath with a name for each strength of a mix. */
function namedStart({ dye, start }: Bath): PlanStart {
  if (start.kind === "fresh" || start.strengthEach === undefined) return start;
  const { strengthEach, ...kept } = start;
  return {
    ...kept,
    mix: mapped(dye.mix!.parts, (part, i) => ({ dye: part.dye.name, strength: strengthEach[i]! })),
  };
}

/** One bath as the run sheet prints it. */
export function planBath(batch: Batch, run: BathRun, lives: BathLives, aims: readonly ShadeAim[]): PlanBath {
  const { bath, setting } = run;
  const restsOnAssumed = bathRestsOn(bath.dye, setting.handling);
  const { dye, start } = bath;
  const { makeUp: made } = run;
  const poured = start.kind === "fresh";
  const amount = (of: number): DyeAmount => dyeFigures(dye.dilution.kind, { amount: of });
  return {
    bath: bath.index,
    tank: bath.tank.name,
    cover: bath.tank.cover,
    dye: dye.name,
    celsius: dye.celsius,
    timeFactor: dye.timeFactor ?? defaults.dye.timeFactor,
    dilution: dye.mix === undefined ? dilutionInWords(dye.dilution) : mixInWords(dye.mix),
    start: namedStart(bath),
    topUpRule: bath.topUp,
    after: bath.after,
    depthReferenceSeconds: run.untried.referenceSeconds,
    makeUp: {
      ...amount(poured ? run.start.dye : 0),
      ...mixFigures(dye, { amount: setting.fresh.dyeEach?.map((one) => (poured ? one : 0)) ?? [] }),
      ...keyedFigure(dye.dilution),
      volumeHotL: made.volumeHotL,
      volumeColdL: made.volumeColdL,
      waterMl: poured ? made.waterMl : 0,
    },
    startTopUp: run.startTopUp && {
      ...amount(run.startTopUp.dye),
      ...mixFigures(dye, { amount: run.startTopUp.dyeEach ?? [] }),
      waterMl: run.startTopUp.waterMl,
      celsius: setting.topUpCelsius,
    },
    heating: run.heating,
    loads: mapped(run.loads, ({ plan, result }, i): PlanLoad => {
      const aim = aims[plan.order.index]!;
      return {
        load: i + 1,
        order: plan.order.index + 1,
        part: plan.order.part.name,
        shade: plan.order.shade.name,
        base: plan.order.base?.name ?? null,
        parts: plan.parts,
        ...(plan.again ? { again: true as const } : {}),
        boundBy: plan.boundBy,
        areaDm2: plan.areaDm2,
        depth: plan.depth,
        reachable: aim.reachable,
        dipSeconds: result.dipSeconds,
        waitSeconds: result.waitSeconds,
        cycleSeconds: result.cycleSeconds,
        celsiusBefore: result.celsiusBefore,
        celsiusAfter: result.celsiusAfter,
        windowSeconds: loadWindow(run, aim, result),
        deltaE00: result.mixedDip?.deltaE00 ?? aim.deltaE00,
        slopePerSecond: loadSlope(run, aim, result),
        lab: result.mixedDip?.lab ?? aim.lab,
        strengthBefore: result.strengthBefore,
        strengthAfter: result.strengthAfter,
        volumeBeforeL: result.volumeBeforeL,
        volumeAfterL: result.volumeAfterL,
        evaporatedL: result.evaporatedL,
        topUp: result.topUp && {
          ...amount(result.topUp.dye),
          ...mixFigures(dye, { amount: result.topUp.dyeEach ?? [] }),
          waterMl: result.topUp.waterMl,
        },
        ...loadMix(dye, result),
        restsOnAssumed,
      };
    }),
    rinse: rinseOf(batch, run, restsOnAssumed),
    coolMinutes: run.coolMinutes,
    leftL: run.cooled.volumeL,
    carryOver: carryOver(run, batch.date),
    dyeBalance: dyeBalance(run, restsOnAssumed),
    energyBalance: run.energy,
    life: lives.all.find((life) => life.rule === bath.topUp)!,
    trialAdvice: trialAdvice(run, aims),
    notes: dye.notes ?? null,
  };
}
