import type { TankHeats } from "../../bath/heat/tank-heats.js";
import { topUpRules } from "../../bath/load/top-up-rules.js";
import type { BatchCosts } from "../../cost/batch-costs.js";
import { done, type Fault, isError, type Outcome, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch, Dye } from "../../model/batch.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import { dipWindow } from "../../uptake/shade/dip-window.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { type Assignment, assignLoads } from "../assign/assign.js";
import { findAims } from "../assign/find-aims.js";
import { type Timeline, timeline } from "../day/timeline.js";
import { assumptionsOf } from "../results/assumptions.js";
import { batchCosts } from "../results/batch-costs.js";
import { aimFaults } from "../warnings/aim-faults.js";
import { dipFaults } from "../warnings/dip-faults.js";
import { implausible } from "../warnings/plausible.js";
import { stockFaults } from "../warnings/stock-faults.js";
import { unknownRepeats } from "../warnings/unknown-repeat.js";
import { type BathLives, bathLives } from "./bath-lives.js";
import { type BathRun, runBath } from "./run-bath.js";
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
  /** By order index. */
  readonly aims: readonly ShadeAim[];
  readonly day: Timeline;
  readonly costs: BatchCosts;
}

/** What dyes and shades ask of the baths, and the loads that follow. */
interface Assigned {
  readonly models: ReadonlyMap<Dye, DyeModel>;
  readonly aims: readonly ShadeAim[];
  readonly assignment: Assignment;
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
  const aimed = findAims(batch, shared.dyes);
  if (!aimed.ok) return aimed;
  const assigned: Assigned = { ...aimed.value, assignment: loadsOf(batch, aimed.value.aims) };
  const runs = runBaths(batch, assigned, shared.heats);
  const shades = mapped(batch.orders, (order) => aimFaults(order, assigned.aims[order.index]!));
  const faults = [
    ...aimed.faults,
    ...assigned.assignment.faults,
    ...idleBaths(batch, assigned.assignment),
    ...runs.flatMap((run) => [...run.faults, ...timeFaults(batch, run, assigned)]),
    ...shades.flatMap(({ warnings }) => warnings),
    ...stockFaults(batch, runs),
    ...implausible(batch),
    ...unknownRepeats(batch),
  ];
  if (faults.some(isError)) return { ok: false, faults };
  const lives = livesOf(batch, runs, which);
  const day = dayOf(batch, runs);
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
    assumptions: assumptionsOf(batch, assigned.models, assigned.aims, runs),
    warnings: faults,
  };
  return done({ runs, lives, aims: assigned.aims, day, costs }, faults);
}

const loadsOf = (batch: Batch, aims: readonly ShadeAim[]): Assignment =>
  assignLoads(batch, (order) => aims[order.index]!);

const isIdle = ({ loads }: Assignment, bath: Batch["baths"][number]): boolean =>
  loads.get(bath)!.length === 0;

/** Every bath that has loads, worked through them. */
const runBaths = (batch: Batch, { models, assignment }: Assigned, heats: TankHeats): BathRun[] =>
  mapped(
    batch.baths.filter((bath) => !isIdle(assignment, bath)),
    (bath) => runBath(bath, batch, models.get(bath.dye)!, assignment.loads.get(bath)!, heats),
  );

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

const timeFaults = (batch: Batch, run: BathRun, { models, aims }: Assigned): Fault[] =>
  dipFaults(
    run.bath,
    batch.handling,
    models.get(run.bath.dye)!.uptake,
    mapped(run.loads, ({ plan, result }) => ({
      plan,
      result,
      window: dipWindow(run.setting.timer, aims[plan.order.index]!, result.strengthDuring),
      freshSeconds: run.setting.timer(plan.freshSeconds, 1),
    })),
  );

const livesOf = (batch: Batch, runs: readonly BathRun[], which: WhichLives): (BathLives | undefined)[] =>
  mapped(runs, (run) =>
    which === "kept" && run.bath.after === "dump"
      ? undefined
      : bathLives(batch, run, which === "all" ? topUpRules : [run.bath.topUp]),
  );

const dayOf = (batch: Batch, runs: readonly BathRun[]): Timeline =>
  timeline(
    mapped(runs, (run) => ({
      bath: run.bath,
      heatingMinutes: run.heating.minutes ?? undefined,
      loads: mapped(run.loads, ({ plan, result }, i) => ({
        load: i + 1,
        parts: plan.parts,
        minutes: result.cycleSeconds / 60,
      })),
    })),
    batch,
  );
