import { dryingKwh, heldW, kwhOf } from "../../bath/heat/power.js";
import { type HeatOf, tankHeat } from "../../bath/heat/tank-heat.js";
import { allocate, sheetOf, sheetTotal } from "../../cost/allocate.js";
import { colourCosts } from "../../cost/price/colour-costs.js";
import { bathItems, partItems } from "../../cost/items.js";
import { hasMoney, notCounted } from "../../cost/missing.js";
import { pricesOf } from "../../cost/rate/plan-prices.js";
import { done, type Fault, failed, isError, type Outcome, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import { type DyeModel, dyeModel, type ShadeAim } from "../../uptake/shade/aim.js";
import { dipWindow } from "../../uptake/shade/dip-window.js";
import { type AimOf, aimMemory, type ModelOf } from "../../uptake/swatches/dye-memory.js";
import { aimFaults } from "../warnings/aim-faults.js";
import { assignLoads } from "../assign/assign.js";
import { assumptionsOf } from "../results/assumptions.js";
import { type BathRun, dyeAmountInWords, runBath } from "./run-bath.js";
import { bathUse } from "./bath-use.js";
import { dipFaults } from "../warnings/dip-faults.js";
import { findAims } from "../assign/find-aims.js";
import type { Batch } from "../../model/batch.js";
import { type BathLives, planLives, topUpRules } from "./bath-lives.js";
import type { Plan } from "../plan-model.js";
import { overLimit, planOrder } from "../results/plan-order.js";
import { implausible } from "../warnings/plausible.js";
import { restsOnAny } from "../../model/rests-on.js";
import { type Timeline, timeline } from "../day/timeline.js";
import { unknownRepeats } from "../warnings/unknown-repeat.js";

function stockFaults(batch: Batch, runs: readonly BathRun[]): Fault[] {
  return batch.dyes.flatMap((dye) => {
    if (dye.stock === undefined) return [];
    const needed = runs
      .filter((run) => run.bath.dye === dye)
      .reduce((sum, run) => sum + (run.bath.start.kind === "fresh" ? run.start.dye : 0) + addedDye(run), 0);
    if (needed <= dye.stock) return [];
    return [
      warning(
        "stock-short",
        ["dyes", dye.name, "stock"],
        `dye "${dye.name}": ${dyeAmountInWords(dye, needed)} needed, ${dyeAmountInWords(dye, dye.stock)} on the shelf`,
        `order at least ${dyeAmountInWords(dye, Math.ceil(needed - dye.stock))}`,
      ),
    ];
  });
}

const timeFaults = (batch: Batch, run: BathRun, model: DyeModel, aimOf: readonly ShadeAim[]): Fault[] =>
  dipFaults(
    run.bath,
    batch.handling,
    model.uptake,
    mapped(run.loads, ({ plan, result }) => {
      const aim = aimOf[plan.order.index]!;
      return {
        plan,
        result,
        window: dipWindow(run.setting.timer, aim, result.strengthDuring),
        freshSeconds: run.setting.timer(plan.depth, 1),
      };
    }),
  );

const addedDye = (run: BathRun): number =>
  run.loads.reduce((sum, { result }) => sum + (result.topUp?.dye ?? 0), 0);

/** How batches are worked where many are wanted: results are the same. */
export interface WorkMemory {
  /** A `dyeMemory` where many batches hold the same dyes. */
  readonly modelOf?: ModelOf;
  /** An `aimMemory` likewise; one batch remembers its own aims. */
  readonly aimOf?: AimOf;
  /** A `heatMemory` where many batches heat the same tanks. */
  readonly heatOf?: HeatOf;
}

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
  readonly costs: Pick<
    Plan,
    | "batch"
    | "date"
    | "currency"
    | "orders"
    | "totals"
    | "restsOnAssumed"
    | "colours"
    | "prices"
    | "notCounted"
    | "exceeded"
    | "assumptions"
    | "warnings"
  >;
}

/**
 * Works a batch through: aims, loads, baths, the day, costs and prices.
 * Errors where an order cannot be dyed, a heater cannot reach its temperature, or a bath is too weak.
 */
export function workBatch(
  batch: Batch,
  which: WhichLives,
  { modelOf = dyeModel, aimOf: findAim = aimMemory(), heatOf = tankHeat }: WorkMemory = {},
): Outcome<WorkedBatch> {
  const aimed = findAims(batch, modelOf, findAim);
  if (!aimed.ok) return aimed;
  const { models, aims: aimOf } = aimed.value;
  const assigned = assignLoads(batch, (order) => {
    const { depth, window } = aimOf[order.index]!;
    return { depth, leastDepth: window?.from };
  });
  const shades = mapped(batch.orders, (order) => aimFaults(order, aimOf[order.index]!));
  const idle = batch.baths.filter((bath) => assigned.loads.get(bath)!.length === 0);
  const runs = mapped(
    batch.baths.filter((bath) => !idle.includes(bath)),
    (bath) => runBath(bath, batch, models.get(bath.dye)!, assigned.loads.get(bath)!, heatOf),
  );
  const faults = [
    ...aimed.faults,
    ...assigned.faults,
    ...(assigned.faults.some(isError)
      ? []
      : mapped(idle, (bath) =>
          warning(
            "idle-bath",
            ["baths", bath.index],
            `no order uses the bath of "${bath.dye.name}" in tank "${bath.tank.name}": it is left out`,
          ),
        )),
    ...runs.flatMap((run) => [...run.faults, ...timeFaults(batch, run, models.get(run.bath.dye)!, aimOf)]),
    ...shades.flatMap(({ warnings }) => warnings),
    ...stockFaults(batch, runs),
    ...implausible(batch),
    ...unknownRepeats(batch),
  ];
  if (faults.some(isError)) return failed(...faults);

  const lives = mapped(runs, (run) =>
    which === "kept" && run.bath.after === "dump"
      ? undefined
      : planLives(batch, run, which === "all" ? topUpRules : [run.bath.topUp]),
  );
  const day = timeline(
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
  const uses = hasMoney(batch) ? mapped(runs, (run, i) => bathUse(batch, run, lives[i]?.own)) : undefined;
  const shared = partItems(batch, assigned.started, day.dryerRuns);
  const items = uses && [...shared, ...uses.flatMap(bathItems)];
  const sheets = items && allocate(items, batch.orders.length);
  const orders = mapped(batch.orders, (order) =>
    planOrder(batch, order, aimOf[order.index]!, assigned.started[order.index]!, sheets?.[order.index]),
  );
  const exceeded = [
    ...shades.flatMap(({ missed }) => missed),
    ...orders.flatMap((order) => overLimit(batch, order.value)),
  ];
  const priceFaults = orders.flatMap((order) => order.faults);
  if (priceFaults.length > 0) return failed(...priceFaults.slice(0, 1));
  const lines = items ? sheetOf(items) : null;
  const dryer = batch.dryers[0];
  const restsOnAssumed = restsOnAny(
    mapped(runs, ({ bath }) => bath.dye),
    batch.handling,
  );
  return done(
    {
      runs,
      lives,
      aims: aimOf,
      day,
      costs: {
        batch: batch.name,
        date: batch.date ?? null,
        currency: batch.currency ?? null,
        orders: mapped(orders, (order) => order.value),
        totals: {
          cost: lines && sheetTotal(lines),
          lines,
          good: batch.orders.reduce((sum, order) => sum + order.quantity, 0),
          started: assigned.started.reduce((sum, count) => sum + count, 0),
          loads: runs.reduce((sum, run) => sum + run.loads.length, 0),
          minutes: day.minutes,
          operatorMinutes: day.operatorMinutes,
          dryerRuns: day.dryerRuns,
          kWh:
            runs.reduce((sum, run) => sum + (run.heating.kWh ?? 0) + workingKwh(run), 0) +
            (dryer ? dryingKwh(dryer, day.dryerRuns) : 0),
          restsOnAssumed,
        },
        restsOnAssumed,
        colours: uses
          ? colourCosts(
              batch,
              uses,
              mapped(allocate(shared, batch.orders.length), sheetTotal),
              mapped(orders, (order) => order.value),
            )
          : [],
        prices: pricesOf(batch),
        notCounted: items ? notCounted(batch) : [],
        exceeded,
        assumptions: assumptionsOf(batch, models, aimOf),
        warnings: faults,
      },
    },
    faults,
  );
}

/** Holding and agitation over the loads of a bath. */
function workingKwh({ bath, heating, loads }: BathRun): number {
  const holdingW = heldW(bath.tank, heating.holdingW);
  return loads.reduce(
    (sum, { result }) => sum + kwhOf(holdingW * result.cycleSeconds + bath.tank.agitationW * result.seconds),
    0,
  );
}
