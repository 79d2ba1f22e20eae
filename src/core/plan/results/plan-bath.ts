import { mapped } from "../../mapped.js";
import { bathRestsOn } from "../../model/rests-on.js";
import { dilutionInWords, keyedFigure } from "../../quantity/dye/dilution.js";
import { type DyeAmount, dyeFigures } from "../../quantity/dye/dye-figures.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import { dipSlope, dipWindow } from "../../uptake/shade/dip-window.js";
import { type BathAdvice, noAdvice } from "../advice/bath-advice.js";
import { trialAdvice } from "../advice/trial-advice.js";
import type { PlanBath, PlanDyeBalance, PlanLoad } from "../plan-model.js";
import type { BathLives } from "../run/bath-lives.js";
import type { BathRun } from "../run/run-bath.js";

function balance(run: BathRun, restsOnAssumed: PlanDyeBalance["restsOnAssumed"]): PlanDyeBalance {
  const sum = (of: (result: BathRun["loads"][number]["result"]) => number): number =>
    run.loads.reduce((total, { result }) => total + of(result), 0);
  return {
    ...dyeFigures(run.bath.dye.dilution.kind, {
      start: run.start.dye,
      added: sum((result) => result.topUp?.dye ?? 0),
      takenUp: sum((result) => result.takenUp),
      draggedOut: sum((result) => result.draggedOut),
      left: run.end.dye,
    }),
    restsOnAssumed,
  };
}

/** One bath as the run sheet prints it. */
export function planBath(
  run: BathRun,
  lives: BathLives,
  aims: readonly ShadeAim[],
  { heat, ...advice }: BathAdvice = noAdvice,
): PlanBath {
  const { bath, setting } = run;
  const restsOnAssumed = bathRestsOn(bath.dye, setting.handling);
  const { dye, start } = bath;
  const { makeUp: made } = run;
  const poured = start.kind === "fresh";
  const amount = (of: number): DyeAmount => dyeFigures(dye.dilution.kind, { amount: of });
  return {
    bath: bath.index,
    tank: bath.tank.name,
    dye: dye.name,
    celsius: dye.celsius,
    dilution: dilutionInWords(dye.dilution),
    start,
    topUpRule: bath.topUp,
    after: bath.after,
    depthReferenceSeconds: run.untried.referenceSeconds,
    makeUp: {
      ...amount(poured ? run.start.dye : 0),
      ...keyedFigure(dye.dilution),
      volumeHotL: made.volumeHotL,
      volumeColdL: made.volumeColdL,
      waterMl: poured ? made.waterMl : 0,
    },
    heating: { ...run.heating, ...heat },
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
        dipSeconds: result.seconds,
        cycleSeconds: result.cycleSeconds,
        windowSeconds: dipWindow(setting.timer, aim, result.strengthDuring),
        deltaE00: aim.deltaE00,
        slopePerSecond: dipSlope(setting.timer, aim, result.strengthDuring),
        lab: aim.lab,
        strengthBefore: result.strengthBefore,
        strengthAfter: result.strengthAfter,
        volumeBeforeL: result.volumeBeforeL,
        volumeAfterL: result.volumeAfterL,
        evaporatedL: result.evaporatedL,
        topUp: result.topUp && { ...amount(result.topUp.dye), waterMl: result.topUp.waterMl },
        restsOnAssumed,
      };
    }),
    dyeBalance: balance(run, restsOnAssumed),
    life: lives.all.find((life) => life.rule === bath.topUp)!,
    lives: lives.all,
    cheapestRule: lives.cheapestRule,
    ...advice,
    trialAdvice: trialAdvice(run, aims),
    notes: dye.notes ?? null,
  };
}
