import { type BathLife, bathLife, type LifeLoad } from "../../bath/life/bath-life.js";
import { dyeFate } from "../../bath/life/dye-fate.js";
import { topUpRules } from "../../bath/load/top-up-rules.js";
import { mapped } from "../../mapped.js";
import type { Batch, Dye, TopUpRule } from "../../model/batch.js";
import { bathRestsOn } from "../../model/rests-on.js";
import { dyeFigures } from "../../quantity/dye/dye-figures.js";
import { dipTimer } from "../../uptake/law/dip-time.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import type { PlanLife } from "../plan-model.js";
import type { BathRun } from "./run-bath.js";

/** A bath's lives under the rules asked for; `own` is the one under the bath's own rule. */
export interface BathLives {
  readonly own: BathLife;
  readonly all: readonly PlanLife[];
  readonly cheapestRule: TopUpRule | null;
}

/** The loads of a bath as the work that its life repeats. */
export const mixOf = (run: BathRun): readonly LifeLoad[] =>
  mapped(run.loads, ({ plan }) => ({
    areaDm2: plan.areaDm2,
    depth: plan.depth,
    freshSeconds: plan.freshSeconds,
    parts: plan.parts,
    massG: plan.parts * plan.order.part.massG,
  }));

/** Repeats the loads of a bath on a fresh one under each of the rules, its own among them; with one, none is the cheapest. */
export function bathLives(batch: Batch, run: BathRun, rules: readonly TopUpRule[] = topUpRules): BathLives {
  const { bath, setting } = run;
  const { dye } = bath;
  const mix = mixOf(run);
  const age = {
    ...(rules.length === 1 ? { tracePoints: 0 } : {}),
    ...(bath.everyDays === undefined ? {} : { everyDays: bath.everyDays }),
    ...(dye.shelfLifeDays === undefined ? {} : { shelfLifeDays: dye.shelfLifeDays }),
  };
  // A trial corrects the bath as it is today; a life is that of a fresh one.
  const timer = dipTimer(run.untried, dye.celsius, madeUpStrength(dye));
  const lives = mapped(rules, (rule) => bathLife({ ...setting, timer, rule }, mix, age));
  const all = mapped(lives, (life) => planLife(batch, bath.tank.volumeL, dye, life, run.freshWaterMl));
  const priced = all.filter((life) => life.costPerPart !== null);
  const cheapest =
    rules.length > 1 && priced.length > 0
      ? priced.reduce((least, life) => (life.costPerPart! < least.costPerPart! ? life : least))
      : undefined;
  return {
    own: lives[rules.indexOf(setting.rule)]!,
    all,
    cheapestRule: cheapest?.rule ?? null,
  };
}

/**
 * Labour counted is that of the dips alone, which last longer in a weaker bath. Setting up and cleaning come with
 * every batch whatever the rule; the work of mixing and topping up is not known.
 */
function planLife(batch: Batch, volumeL: number, dye: Dye, life: BathLife, freshWaterMl: number): PlanLife {
  const { rates } = batch;
  const per = (amount: number, count: number): number | null => (count > 0 ? amount / count : null);
  const perPart = per(life.dyeUsed, life.parts);
  const perDm2 = per(life.dyeUsed, life.areaDm2);
  const bathCost =
    dye.price === undefined
      ? null
      : (dye.price * life.dyeUsed) / 1000 +
        ((rates.waterPerM3 ?? 0) * (freshWaterMl + life.waterMl)) / 1e6 +
        (rates.disposalPerL ?? 0) * volumeL;
  const dipLabour = rates.labourPerHour === undefined ? null : (rates.labourPerHour * life.dipSeconds) / 3600;
  const cost = bathCost === null ? null : bathCost + (dipLabour ?? 0);
  const share = (amount: number | null): number | null => (amount === null ? null : per(amount, life.parts));
  const common = {
    rule: life.rule,
    loads: life.loads,
    parts: life.parts,
    areaDm2: life.areaDm2,
    endedBy: life.endedBy,
    days: life.days,
    bathCostPerPart: share(bathCost),
    dipLabourPerPart: share(dipLabour),
    cost,
    costPerPart: share(cost),
    dipSeconds: life.dipSeconds,
    dyeFate: dyeFate({ takenUp: life.takenUp, draggedOut: life.draggedOut, left: life.dyeLeft }),
    restsOnAssumed: bathRestsOn(dye, batch.handling),
  };
  return { ...common, ...dyeFigures(dye.dilution.kind, { perPart, perDm2 }) };
}
