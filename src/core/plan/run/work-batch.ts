import type { TankHeats } from "../../bath/heat/tank-heats.js";
import { topUpRules } from "../../bath/load/top-up-rules.js";
import type { BatchCosts } from "../../cost/batch-costs.js";
import { done, type Fault, isError, type Outcome, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch, Dye } from "../../model/batch.js";
import { isDyed } from "../../model/undyed.js";
import type { MixedDye } from "../../recipe/mixed-bath/mixed-dye.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import { dipWindow } from "../../uptake/shade/dip-window.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { type Assignment, assignLoads } from "../assign/assign.js";
import { findAims, type OrderAim } from "../assign/find-aims.js";
import { assumptionsOf } from "../assumptions/assumptions-of.js";
import { type BathOnTheDay, type Timeline, timeline } from "../day/timeline.js";
import { batchCosts } from "../results/batch-costs.js";
import { aimFaults } from "../warnings/aim-faults.js";
import { carryOverFaults } from "../warnings/carry-over-faults.js";
import { dipFaults } from "../warnings/dip-faults.js";
import { mixFaults } from "../warnings/mix-faults.js";
import { implausible } from "../warnings/plausible.js";
import { rinseFaults } from "../warnings/rinse-faults.js";
import { stockFaults } from "../warnings/stock-faults.js";
import { unknownRepeats } from "../warnings/unknown-repeat.js";
import { waitFaults } from "../warnings/wait-faults.js";
import { type BathLives, bathLives } from "./bath-lives.js";
import type { BathRun, LoadResult } from "./bath-run.js";
import { type BathWorker, bathWorker } from "./bath-worker.js";
import { loadWindow } from "./load-window.js";
import { SharedWork } from "./shared-work.js";

/**
 * Bath lives that are worked: under every top-up rule, under each bath's own, or that of kept baths only, whose
 * costs it decides.
 */
export type WhichLives = "all" | "own" | "kept";

/** A batch worked through, and what it costs: the parts of a plan that hold whatever is printed of it. */
export interface WorkedBatch {
  readonly runs: readonly BathRun[];
  /** One a run; absent for a bath that is dumped where lives of kept ones are asked for. */
  readonly lives: readonly (BathLives | undefined)[];
  /** By order index; none at an order of undyed parts. */
  readonly aims: readonly ShadeAim[];
  readonly day: Timeline;
  readonly costs: BatchCosts;
}

/** What dyes and shades ask of the baths, and the loads that follow. */
interface Assigned {
  readonly models: ReadonlyMap<Dye, DyeModel>;
  readonly mixed: ReadonlyMap<Dye, MixedDye>;
  readonly aims: readonly OrderAim[];
  readonly assignment: Assignment;
}

/** The baths of a batch worked by the clock, and what they were asked for. */
interface WorkedDay extends Pick<WorkedBatch, "runs" | "day"> {
  readonly assigned: Assigned;
}

/**
 * Works the day of a batch: aims, loads, baths, the clock. Errors where an order cannot be dyed or a heater cannot reach
 * its temperature; what is wrong in the work itself is in the faults of each run.
 */
export function workDay(batch: Batch, shared: SharedWork): Outcome<WorkedDay> {
  const aimed = findAims(batch, shared);
  if (!aimed.ok) return aimed;
  const assigned: Assigned = { ...aimed.value, assignment: loadsOf(batch, aimed.value.aims) };
  const workers = workersOf(batch, assigned, shared.heats);
  const startFaults = workers.flatMap((worker) => worker.startFaults);
  const before = [
    ...aimed.faults,
    ...assigned.assignment.faults,
    ...idleBaths(batch, assigned.assignment),
    ...startFaults,
  ];
  // A slip of a unit is often why: it is said with what it leads to.
  if (before.some(isError)) return { ok: false, faults: [...before, ...implausible(batch)] };
  const day = timeline(mapped(workers, onTheDay), batch);
  const runs = mapped(workers, (worker) => worker.run());
  return done({ runs, day, assigned }, before);
}

/**
 * Works a batch through: aims, loads, baths, the day, costs and prices.
 * Errors where an order cannot be dyed, a heater cannot reach its temperature, or a bath is too weak.
 */
export function workBatch(
  batch: Batch,
  which: WhichLives,
  shared: SharedWork = new SharedWork(),
): Outcome<WorkedBatch> {
  const worked = workDay(batch, shared);
  if (!worked.ok) return worked;
  const { runs, day, assigned } = worked.value;
  const before = worked.faults;
  const shades = mapped(batch.orders.filter(isDyed), (order) =>
    aimFaults(order, assigned.aims[order.index]!),
  );
  const faults = [
    ...before,
    ...runs.flatMap((run) => [
      ...run.faults,
      ...timeFaults(batch, run, assigned),
      ...waitFaults(batch, run, assigned.models.get(run.bath.dye)!, shared.heats),
    ]),
    ...rinseFaults(batch, runs),
    ...carryOverFaults(batch, runs, assigned),
    ...mixFaults(runs, assigned.aims),
    ...shades.flatMap(({ warnings }) => warnings),
    ...stockFaults(batch, runs),
    ...implausible(batch),
    ...unknownRepeats(batch),
  ];
  if (faults.some(isError)) return { ok: false, faults };
  const lives = livesOf(batch, runs, which);
  const costed = batchCosts(batch, {
    runs,
    lives: mapped(lives, (life) => life?.own),
    aims: assigned.aims,
    started: assigned.assignment.started,
    day,
  });
  if (!costed.ok) return costed;
  const costs: BatchCosts = {
    ...costed.value,
    exceeded: [...shades.flatMap(({ missed }) => missed), ...costed.value.exceeded],
    assumptions: assumptionsOf({ batch, ...assigned, runs, shares: costed.value.totals.assumedShares }),
    warnings: faults,
  };
  return done({ runs, lives, aims: assigned.aims, day, costs }, faults);
}

const loadsOf = (batch: Batch, aims: readonly OrderAim[]): Assignment =>
  assignLoads(batch, (order) => aims[order.index]!);

const isIdle = ({ portions }: Assignment, bath: Batch["baths"][number]): boolean =>
  portions.get(bath)!.length === 0;

/** Every bath that has something to dye, filled and heated. */
const workersOf = (batch: Batch, { models, assignment }: Assigned, heats: TankHeats): BathWorker[] =>
  mapped(
    batch.baths.filter((bath) => !isIdle(assignment, bath)),
    (bath) => bathWorker(batch, bath, models.get(bath.dye)!, assignment.portions.get(bath)!, heats),
  );

const inMinutes = (seconds: number | undefined): number | undefined =>
  seconds === undefined ? undefined : seconds / 60;

/** A bath as the clock sees it. */
function onTheDay(worker: BathWorker): BathOnTheDay {
  let load = 0;
  return {
    tank: worker.bath.tank.name,
    bath: worker.bath.index,
    heatingMinutes: worker.heatingMinutes,
    nextWaitMinutes: () => inMinutes(worker.nextWaitSeconds()),
    pass: (minutes) => worker.pass(60 * minutes),
    work: () => {
      const worked = worker.work();
      if (worked === undefined) return undefined;
      const { plan, result } = worked;
      load += 1;
      return {
        load,
        parts: plan.parts,
        waitMinutes: result.waitSeconds / 60,
        minutes: result.cycleSeconds / 60,
      };
    },
    cool: () => worker.cool() ?? 0,
  };
}

/** Baths without loads, unless loads are missing because of an error. */
const idleBaths = (batch: Batch, assignment: Assignment): Fault[] =>
  assignment.faults.some(isError)
    ? []
    : mapped(
        batch.baths.filter((bath) => isIdle(assignment, bath)),
        (bath) =>
          warning(
            "idle-bath",
            ["baths", bath.index],
            `no order uses the bath of "${bath.dye.name}" in tank "${bath.tank.name}": it is left out`,
          ),
      );

/** A window this many times as wide as a dip can be timed stays wider than twice that in a cooler or warmer bath [-]. */
const surelyWide = 4;

/** The window of a load as far as it must be known to be judged: exactly where it may be too narrow. */
function judgedWindow(
  run: BathRun,
  aim: ShadeAim,
  result: LoadResult,
): readonly [number, number | null] | null {
  const { timer, handling } = run.setting;
  if (result.mixedDip !== undefined) return loadWindow(run, aim, result);
  const roughly = dipWindow(timer, aim, result.strengthDuring);
  if (roughly === null || roughly[1] === null) return roughly;
  return roughly[1] - roughly[0] > surelyWide * handling.timingSeconds
    ? roughly
    : loadWindow(run, aim, result);
}

const timeFaults = (batch: Batch, run: BathRun, { models, aims }: Assigned): Fault[] =>
  dipFaults(
    run.bath,
    batch.handling,
    models.get(run.bath.dye)!.uptake,
    mapped(run.loads, ({ plan, result }) => ({
      plan,
      result,
      window: judgedWindow(run, aims[plan.order.index]!, result),
      freshSeconds: run.setting.timer(plan.freshSeconds, 1),
    })),
  );

const livesOf = (batch: Batch, runs: readonly BathRun[], which: WhichLives): (BathLives | undefined)[] =>
  mapped(runs, (run) =>
    which === "kept" && run.bath.after === "dump"
      ? undefined
      : bathLives(batch, run, which === "all" ? topUpRules : [run.bath.topUp]),
  );
