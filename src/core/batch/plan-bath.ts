import { dilutionInWords } from "../bath/dilution-in-words.js";
import { type BathLife, bathLife } from "../bath/life.js";
import { makeUp } from "../bath/make-up.js";
import type { BathSetting } from "../bath/run.js";
import type { ShadeAim } from "../uptake/aim.js";
import type { BathRun } from "./bath-plan.js";
import type { Batch, Dye, TopUpRule } from "./model.js";
import type { DyeAmount, PlanBath, PlanDyeBalance, PlanLife, PlanLoad } from "./plan-model.js";

const amountOf = (dye: Dye, amount: number): DyeAmount =>
  dye.dilution.kind === "liquid" ? { concentrateMl: amount } : { powderG: amount };

/** A bath's lives under the rules asked for; `own` is the one under the bath's own rule. */
export interface BathLives {
  readonly own: BathLife;
  readonly all: readonly PlanLife[];
  readonly cheapestRule: TopUpRule | null;
  readonly freshWaterMl: number;
}

export const topUpRules: readonly TopUpRule[] = ["none", "level", "strength"];

/** Repeats the loads of a bath on a fresh one under each of the rules, its own among them; with one, none is the cheapest. */
export function planLives(batch: Batch, run: BathRun, rules: readonly TopUpRule[] = topUpRules): BathLives {
  const { bath, setting } = run;
  const { tank, dye } = bath;
  const mix = run.loads.map(({ plan }) => ({
    areaDm2: plan.areaDm2,
    depth: plan.depth,
    parts: plan.parts,
    massG: plan.parts * plan.order.part.massG,
  }));
  const age = {
    ...(rules.length === 1 ? { tracePoints: 0 } : {}),
    ...(bath.everyDays === undefined ? {} : { everyDays: bath.everyDays }),
    ...(dye.shelfLifeDays === undefined ? {} : { shelfLifeDays: dye.shelfLifeDays }),
  };
  const fresh = makeUp({
    volumeHotL: tank.volumeL,
    celsius: dye.celsius,
    roomCelsius: batch.room.celsius,
    dilution: dye.dilution,
  });
  const lives = rules.map((rule) => bathLife({ ...setting, rule }, mix, age));
  const all = lives.map((life) => planLife(batch, bath.tank.volumeL, dye, life, fresh.waterMl));
  const priced = all.filter((life) => life.bathCostPerPart !== null);
  const cheapest =
    rules.length > 1 && priced.length > 0
      ? priced.reduce((least, life) => (life.bathCostPerPart! < least.bathCostPerPart! ? life : least))
      : undefined;
  return {
    own: lives[rules.indexOf(setting.rule)]!,
    all,
    cheapestRule: cheapest?.rule ?? null,
    freshWaterMl: fresh.waterMl,
  };
}

function planLife(batch: Batch, volumeL: number, dye: Dye, life: BathLife, freshWaterMl: number): PlanLife {
  const { rates } = batch;
  const perPart = life.parts > 0 ? life.dyeUsed / life.parts : null;
  const perDm2 = life.areaDm2 > 0 ? life.dyeUsed / life.areaDm2 : null;
  const cost =
    dye.price === undefined || life.parts === 0
      ? null
      : ((dye.price * life.dyeUsed) / 1000 +
          ((rates.waterPerM3 ?? 0) * (freshWaterMl + life.waterMl)) / 1e6 +
          (rates.disposalPerL ?? 0) * volumeL) /
        life.parts;
  const common = {
    rule: life.rule,
    loads: life.loads,
    parts: life.parts,
    areaDm2: life.areaDm2,
    endedBy: life.endedBy,
    bathCostPerPart: cost,
  };
  return dye.dilution.kind === "liquid"
    ? { ...common, concentrateMlPerPart: perPart, concentrateMlPerDm2: perDm2 }
    : { ...common, powderGPerPart: perPart, powderGPerDm2: perDm2 };
}

function balance(run: BathRun): PlanDyeBalance {
  const sum = (of: (result: BathRun["loads"][number]["result"]) => number): number =>
    run.loads.reduce((total, { result }) => total + of(result), 0);
  const start = run.start.dye;
  const added = sum((result) => result.topUp?.dye ?? 0);
  const takenUp = sum((result) => result.takenUp);
  const draggedOut = sum((result) => result.draggedOut);
  const left = run.end.dye;
  return run.bath.dye.dilution.kind === "liquid"
    ? { startMl: start, addedMl: added, takenUpMl: takenUp, draggedOutMl: draggedOut, leftMl: left }
    : { startG: start, addedG: added, takenUpG: takenUp, draggedOutG: draggedOut, leftG: left };
}

/** Times at which the ends of a shade's window are reached in the bath as it is; a far end of null is never reached. */
export function windowOf(
  { timer }: BathSetting,
  aim: ShadeAim,
  strength: number,
): readonly [number, number | null] | null {
  if (!aim.window) return null;
  const from = timer(aim.window.from, strength);
  const to = aim.window.to === null ? undefined : timer(aim.window.to, strength);
  return from === undefined ? null : [from, to ?? null];
}

/** CIEDE2000 per second at a dip: that of a fresh bath, slowed as the dip itself is. */
function slopeOf({ timer }: BathSetting, aim: ShadeAim, strength: number): number | null {
  if (aim.slopePerFreshSecond === null || aim.depth === 0) return null;
  const step = 1e-4;
  const [now, later] = [timer(aim.depth, strength), timer(aim.depth * (1 + step), strength)];
  const [freshNow, freshLater] = [timer(aim.depth, 1), timer(aim.depth * (1 + step), 1)];
  if (now === undefined || later === undefined || freshNow === undefined || freshLater === undefined)
    return null;
  return (aim.slopePerFreshSecond * (freshLater - freshNow)) / (later - now);
}

/** One bath as the run sheet prints it. */
export function planBath(run: BathRun, lives: BathLives, aims: readonly ShadeAim[]): PlanBath {
  const { bath, setting } = run;
  const { dye, start } = bath;
  const { makeUp: made } = run;
  const poured = start.kind === "fresh";
  return {
    tank: bath.tank.name,
    dye: dye.name,
    celsius: dye.celsius,
    dilution: dilutionInWords(dye.dilution),
    start,
    topUpRule: bath.topUp,
    after: bath.after,
    depthReferenceSeconds: setting.model.referenceSeconds,
    makeUp: {
      ...amountOf(dye, poured ? run.start.dye : 0),
      ...(dye.dilution.kind === "liquid"
        ? { fraction: dye.dilution.fraction }
        : { gramsPerL: dye.dilution.gramsPerL }),
      volumeHotL: made.volumeHotL,
      volumeColdL: made.volumeColdL,
      waterMl: poured ? made.waterMl : 0,
    },
    heating: run.heating,
    loads: run.loads.map(({ plan, result }, i): PlanLoad => {
      const aim = aims[plan.order.index]!;
      return {
        load: i + 1,
        order: plan.order.index + 1,
        part: plan.order.part.name,
        shade: plan.order.shade.name,
        base: plan.order.base?.name ?? null,
        parts: plan.parts,
        boundBy: plan.boundBy,
        areaDm2: plan.areaDm2,
        depth: plan.depth,
        reachable: aim.reachable,
        dipSeconds: result.seconds,
        cycleSeconds: result.cycleSeconds,
        windowSeconds: windowOf(setting, aim, result.strengthDuring),
        deltaE00: aim.deltaE00,
        slopePerSecond: slopeOf(setting, aim, result.strengthDuring),
        lab: aim.lab,
        strengthBefore: result.strengthBefore,
        strengthAfter: result.strengthAfter,
        volumeBeforeL: result.volumeBeforeL,
        volumeAfterL: result.volumeAfterL,
        evaporatedL: result.evaporatedL,
        topUp: result.topUp && { ...amountOf(dye, result.topUp.dye), waterMl: result.topUp.waterMl },
      };
    }),
    dyeBalance: balance(run),
    life: lives.all.find((life) => life.rule === bath.topUp)!,
    lives: lives.all,
    cheapestRule: lives.cheapestRule,
    notes: dye.notes ?? null,
  };
}
