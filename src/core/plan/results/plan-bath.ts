import { dilutionInWords } from "../../bath/make-up/dilution-in-words.js";
import type { DyeAmount } from "../../bath/make-up/make-up.js";
import { mapped } from "../../mapped.js";
import type { Dye } from "../../model/batch.js";
import { bathRestsOn } from "../../model/rests-on.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import { dipSlope, dipWindow } from "../../uptake/shade/dip-window.js";
import { type BathAdvice, noAdvice } from "../advice/bath-advice.js";
import { trialAdvice } from "../advice/trial-advice.js";
import type { PlanBath, PlanDyeBalance, PlanLoad } from "../plan-model.js";
import type { BathLives } from "../run/bath-lives.js";
import type { BathRun } from "../run/run-bath.js";

const amountOf = (dye: Dye, amount: number): DyeAmount =>
  dye.dilution.kind === "liquid" ? { concentrateMl: amount } : { powderG: amount };

function balance(run: BathRun, restsOnAssumed: PlanDyeBalance["restsOnAssumed"]): PlanDyeBalance {
  const sum = (of: (result: BathRun["loads"][number]["result"]) => number): number =>
    run.loads.reduce((total, { result }) => total + of(result), 0);
  const start = run.start.dye;
  const added = sum((result) => result.topUp?.dye ?? 0);
  const takenUp = sum((result) => result.takenUp);
  const draggedOut = sum((result) => result.draggedOut);
  const left = run.end.dye;
  return run.bath.dye.dilution.kind === "liquid"
    ? {
        startMl: start,
        addedMl: added,
        takenUpMl: takenUp,
        draggedOutMl: draggedOut,
        leftMl: left,
        restsOnAssumed,
      }
    : {
        startG: start,
        addedG: added,
        takenUpG: takenUp,
        draggedOutG: draggedOut,
        leftG: left,
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
      ...amountOf(dye, poured ? run.start.dye : 0),
      ...(dye.dilution.kind === "liquid"
        ? { fraction: dye.dilution.fraction }
        : { gramsPerL: dye.dilution.gramsPerL }),
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
        topUp: result.topUp && { ...amountOf(dye, result.topUp.dye), waterMl: result.topUp.waterMl },
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
