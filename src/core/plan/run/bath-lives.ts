import { type BathLife, bathLife } from "../../bath/life/bath-life.js";
import { dyeFate } from "../../bath/life/dye-fate.js";
import type { BathSetting } from "../../bath/load/bath-setting.js";
import { topUpRules } from "../../bath/load/top-up-rules.js";
import { dyeCost, isPriced } from "../../cost/dye-cost.js";
import { mapped } from "../../mapped.js";
import type { Batch, Dye, TopUpRule } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { bathRestsOn } from "../../model/rests-on.js";
import { dyeFigures } from "../../quantity/dye/dye-figures.js";
import { dipTimer } from "../../uptake/law/dip-time.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import type { PlanLife } from "../plan-model.js";
import type { BathRun } from "./bath-run.js";

/** A bath's lives under the rules asked for; `own` is the one under the bath's own rule. */
export interface BathLives {
  readonly own: BathLife;
  readonly all: readonly PlanLife[];
  /** Dips of the bath's portions in a fresh bath at its temperature. */
  readonly freshDipSeconds: readonly number[];
  readonly cheapestRule: TopUpRule | null;
}

/** Loads of a life that are kept to be drawn. */
const tracePoints = 60;

/**
 * Repeats the loads of a bath on a fresh one under each of the rules, its own among them. With one rule none is the
 * cheapest, and no load is traced.
 */
export function bathLives(batch: Batch, run: BathRun, rules: readonly TopUpRule[] = topUpRules): BathLives {
  const { bath, setting } = run;
  const { dye } = bath;
  const age = {
    ...(bath.everyDays === undefined ? {} : { everyDays: bath.everyDays }),
    ...(dye.shelfLifeDays === undefined ? {} : { shelfLifeDays: dye.shelfLifeDays }),
  };
  // A trial corrects the bath as it is today; a life is that of a fresh one.
  const timer = dipTimer(run.untried, dye.celsius, madeUpStrength(dye));
  const lifeUnder = (one: BathSetting, points = 0): BathLife =>
    bathLife({ ...one, timer }, run.portions, { ...age, tracePoints: points });
  const traced = (rule: TopUpRule): number => (rules.length > 1 && rule === setting.rule ? tracePoints : 0);
  const lives = mapped(rules, (rule) => lifeUnder({ ...setting, rule }, traced(rule)));
  const all = mapped(lives, (life) => planLife(batch, bath.tank.volumeL, dye, life, run.freshWaterMl));
  return {
    own: lives[rules.indexOf(setting.rule)]!,
    all,
    freshDipSeconds: mapped(run.portions, ({ freshSeconds }) => timer(freshSeconds, 1)),
    cheapestRule: rules.length > 1 ? surelyCheapest(batch, run, rules, lifeUnder) : null,
  };
}

/** Costs that differ by less than this share are equal: nobody prices closer. Common practice, no source. */
const samePrice = 0.01;

/**
 * The rule that costs least per part, wherever in their 95 % ranges the assumed uptake and drag-out lie; null where that
 * depends on them, or the next one is within 1 %.
 */
function surelyCheapest(
  batch: Batch,
  run: BathRun,
  rules: readonly TopUpRule[],
  lifeUnder: (setting: BathSetting) => BathLife,
): TopUpRule | null {
  const { dye, tank } = run.bath;
  const { handling } = batch;
  const ends = (assumed: boolean, { factor }: { readonly factor: number }): number[] =>
    assumed ? [1, 1 / factor, factor] : [1];
  let cheapest: TopUpRule | null = null;
  for (const u of ends(dye.uptakeAssumed, defaults.dye.uptakeMlPerDm2))
    for (const d of ends(handling.dragOutAssumed, defaults.handling.dragOutMlPerDm2)) {
      const drawn: BathSetting = {
        ...run.setting,
        dye: { ...run.setting.dye, uptakePerDm2: u * dye.uptakePerDm2 },
        ...(run.setting.uptakeEachPerDm2 && {
          uptakeEachPerDm2: run.setting.uptakeEachPerDm2.map((uptake) => u * uptake),
        }),
        handling: { ...handling, dragOutMlPerDm2: d * handling.dragOutMlPerDm2 },
      };
      const costs = mapped(rules, (rule) => {
        const life = lifeUnder({ ...drawn, rule });
        return { rule, cost: planLife(batch, tank.volumeL, dye, life, run.freshWaterMl).costPerPart };
      });
      if (costs.some(({ cost }) => cost === null)) return null;
      const [least, next] = costs.sort((a, b) => a.cost! - b.cost!);
      if (next !== undefined && least!.cost! >= next.cost! * (1 - samePrice)) return null;
      if (cheapest !== null && cheapest !== least!.rule) return null;
      cheapest = least!.rule;
    }
  return cheapest;
}

/**
 * Labour counted is what rules differ in: dips and waits, which last longer in a weaker bath and after a cold top-up, and
 * the handling of a load, since there are more loads in a bath that falls. What each part takes, setting up and cleaning
 * come with every batch whatever the rule; topping up counts where its time is given.
 */
function planLife(batch: Batch, volumeL: number, dye: Dye, life: BathLife, freshWaterMl: number): PlanLife {
  const { rates } = batch;
  const per = (amount: number, count: number): number | null => (count > 0 ? amount / count : null);
  const perPart = per(life.dyeUsed, life.parts);
  const perDm2 = per(life.dyeUsed, life.areaDm2);
  const bathCost = !isPriced(dye)
    ? null
    : dyeCost(dye, life.dyeUsedEach ?? [life.dyeUsed]) +
      ((rates.waterPerM3 ?? 0) * (freshWaterMl + life.waterMl)) / 1e6 +
      (rates.disposalPerL ?? 0) * volumeL;
  const { loadSeconds, drainSeconds, rinseSeconds, unloadSeconds } = batch.handling;
  const handlingSeconds = life.loads * (loadSeconds + drainSeconds + rinseSeconds + unloadSeconds);
  const dipLabour =
    rates.labourPerHour === undefined
      ? null
      : (rates.labourPerHour * (life.dipSeconds + life.waitSeconds + life.tendingSeconds + handlingSeconds)) /
        3600;
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
