import type { TankHeats } from "../../bath/heat/tank-heats.js";
import { copyOfHeat } from "../../bath/heat/working/heat-state.js";
import { hold } from "../../bath/heat/working/hold.js";
import { fallTo } from "../../bath/heat/working/rise-and-fall.js";
import { strengthOf } from "../../bath/load/bath-setting.js";
import type { BathState } from "../../bath/load/bath-state.js";
import { dipClock } from "../../bath/load/dip-clock.js";
import { rackSeconds, rinseChangeSeconds } from "../../bath/load/handling-seconds.js";
import { loadSize, nextLoad } from "../../bath/load/load-size.js";
import { strengthEach } from "../../bath/load/mixed-load.js";
import { isSurelyReady, makeReady, workOn } from "../../bath/load/work-load.js";
import { topUpOf, type WorkedBath } from "../../bath/load/worked-bath.js";
import { makeUp } from "../../bath/make-up/make-up.js";
import type { Fault } from "../../fault.js";
import type { Batch, Bath } from "../../model/batch.js";
import { dipTimer } from "../../uptake/law/dip-time.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { triedUptake } from "../../uptake/shade/tried-uptake.js";
import type { Portion } from "../assign/assign.js";
import { startFaults } from "../warnings/start-faults.js";
import { trialFaults } from "../warnings/trial-faults.js";
import type { BathEnergy, BathRun, LoadPlan, LoadResult, WorkedLoad } from "./bath-run.js";
import { loadFaults } from "./load-faults.js";
import { settingOf, startBath } from "./start-bath.js";

/** A bath on its day: whoever holds the clock says when it works, waits and cools. */
export interface BathWorker {
  readonly bath: Bath;
  /** Undefined where no heater is known. */
  readonly heatingMinutes: number | undefined;
  /** What is wrong with the bath before its first load. */
  readonly startFaults: readonly Fault[];
  /** Seconds that the bath must still wait, lid on, if its next load is racked now; undefined where none is left. */
  nextWaitSeconds(): number | undefined;
  /** The operator is elsewhere for a time, lid on, heater on. */
  pass(seconds: number): void;
  /** Works the next load; undefined where it cannot be worked, and so no other. */
  work(): WorkedLoad | undefined;
  /** All is off and the lid too until the bath is cool enough to be emptied; gives the minutes, null where it never is. */
  cool(): number | null;
  run(): BathRun;
}

/** What a bath did with one load. */
function resultOf(
  bath: WorkedBath,
  { fresh }: BathRun["setting"],
  before: BathState,
  clock: LoadResult["clock"],
): LoadResult {
  const { takenUp, draggedOut, draggedOutL, volumeBeforeL, volumeL } = bath;
  return {
    dipSeconds: bath.dipSeconds,
    setSeconds: bath.setSeconds,
    waitSeconds: bath.waitSeconds,
    cycleSeconds: bath.cycleSeconds,
    celsiusBefore: bath.celsiusBefore,
    celsiusAfter: bath.celsiusAfter,
    takenUp,
    draggedOut,
    draggedOutL,
    evaporatedL: bath.evaporatedL,
    strengthBefore: bath.strengthBefore,
    strengthDuring: bath.strengthDuring,
    volumeBeforeL,
    strengthAfter: strengthOf(bath, fresh),
    volumeAfterL: volumeL,
    topUp: topUpOf(bath),
    takenUpEach: bath.takenUpEach,
    draggedOutEach: bath.draggedOutEach,
    mixedDip: bath.mixedDip,
    strengthBeforeEach: strengthEach({ ...before, volumeL: volumeBeforeL }, fresh),
    strengthAfterEach: strengthEach(bath, fresh),
    topUpShort: bath.topUpShort,
    dyePerLOut: draggedOutL > 0 ? draggedOut / draggedOutL : 0,
    clock,
  };
}

const energyOf = ({
  heaterKwh,
  agitationKwh,
  lostKwh,
  bathKwh,
  partsKwh,
  topUpKwh,
}: WorkedBath): BathEnergy => ({ heaterKwh, agitationKwh, lostKwh, bathKwh, partsKwh, topUpKwh });

const stateOf = ({ volumeL, dye, dyeEach }: WorkedBath): BathState => ({ volumeL, dye, dyeEach });

/** Takes over a bath and all that it is to dye. */
export function bathWorker(
  batch: Batch,
  bath: Bath,
  model: DyeModel,
  portions: readonly Portion[],
  heats: TankHeats,
): BathWorker {
  const { tank, dye, start } = bath;
  const untried = settingOf(batch, bath, model.uptake, heats);
  const started = startBath(batch, bath, untried, heats);
  const state = started.bath;
  // A trial is dipped in the bath that the loads meet: filled by its rule, and hot.
  const tried = triedUptake(model, {
    strength: strengthOf(state, untried.fresh),
    celsius: dye.celsius,
    ...(bath.trial === undefined ? {} : { trial: bath.trial }),
  });
  const uptake = tried.ok ? tried.value?.uptake : undefined;
  const setting =
    uptake === undefined
      ? untried
      : { ...untried, timer: dipTimer(uptake, dye.celsius, madeUpStrength(dye)) };
  const last = bath.after === "dump" ? { ...setting, rule: "none" as const } : setting;
  const faults = loadFaults(bath, setting);
  const loads: WorkedLoad[] = [];
  const left = portions.map(({ parts }) => parts);
  let at = 0;
  let stopped = false;
  let coolMinutes: number | null = null;
  let end = stateOf(state);
  let energy = energyOf(state);

  /** The next load in the liquor that is there now. */
  const next = (): LoadPlan | undefined => {
    if (stopped || at === portions.length) return undefined;
    const portion = portions[at]!;
    const { parts: most, boundBy } = loadSize(portion.part, setting.tank, setting.handling, state.volumeL);
    const parts = most < 1 ? left[at]! : nextLoad(left[at]!, most);
    return { ...portion, parts, areaDm2: parts * portion.part.areaDm2, boundBy };
  };

  /** Until the next load is racked. */
  const rackedSeconds = (parts: number): number =>
    rinseChangeSeconds(setting, state.loadsRinsed) + rackSeconds(setting, parts);

  return {
    bath,
    heatingMinutes: started.heating.minutes ?? undefined,
    startFaults: [...started.faults, ...startFaults(batch, bath, portions), ...trialFaults(bath, tried)],
    nextWaitSeconds: () => {
      const plan = next();
      if (plan === undefined) return undefined;
      if (isSurelyReady(setting, state)) return 0;
      return makeReady(setting, copyOfHeat(state), rackedSeconds(plan.parts)) ?? 0;
    },
    pass: (seconds) => hold(setting.heat, setting.heat.covered, state, seconds),
    work: () => {
      const plan = next();
      if (plan === undefined) return undefined;
      const before = stateOf(state);
      const heatBefore = copyOfHeat(state);
      const isEnd = plan.parts === left[at];
      const racked = rackedSeconds(plan.parts);
      const hindered = workOn(state, isEnd && at === portions.length - 1 ? last : setting, plan);
      if (hindered !== undefined) {
        stopped = true;
        faults.hindered(hindered, before, plan, loads.length + 1);
        return undefined;
      }
      if (isEnd) at++;
      else left[at] = left[at]! - plan.parts;
      const clock = dipClock(setting, heatBefore, plan, racked);
      const worked = { plan, result: resultOf(state, setting, before, clock) };
      loads.push(worked);
      faults.worked(worked, before, loads.length);
      end = stateOf(state);
      energy = energyOf(state);
      return worked;
    },
    cool: () => {
      const { coolToCelsius } = batch.handling;
      const seconds = fallTo(setting.heat, state, coolToCelsius);
      coolMinutes = seconds === undefined ? null : seconds / 60;
      return coolMinutes;
    },
    run: () => {
      const madeUp = (volumeHotL: number) =>
        makeUp({
          volumeHotL,
          celsius: dye.celsius,
          roomCelsius: batch.room.celsius,
          dilution: dye.dilution,
        });
      const fresh = madeUp(tank.volumeL);
      return {
        bath,
        setting,
        untried: model.uptake,
        makeUp: start.kind === "fresh" ? fresh : madeUp(start.volumeL),
        freshWaterMl: fresh.waterMl,
        heating: started.heating,
        portions,
        loads,
        start: started.start,
        startTopUp: started.startTopUp,
        end,
        cooled: stateOf(state),
        coolMinutes,
        energy,
        faults: faults.all(),
      };
    },
  };
}
