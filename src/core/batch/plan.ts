import { allocate, sheetOf, sheetTotal } from "../cost/allocate.js";
import { colourCosts } from "../cost/colours.js";
import { bathItems, partItems } from "../cost/items.js";
import { hasMoney, notCounted } from "../cost/missing.js";
import { otherBases } from "../cost/other-bases.js";
import { pricesOf } from "../cost/prices.js";
import { moneyText } from "../cost/rounding.js";
import { sellingPrice } from "../cost/selling-price.js";
import { done, error, type Fault, failed, type Outcome, warning } from "../fault.js";
import { aimAt, type DyeModel, dyeModel, type ShadeAim } from "../uptake/aim.js";
import type { AimOf, ModelOf } from "../uptake/dye-memory.js";
import { adviceFor } from "./advice.js";
import { aimFaults } from "./aim-faults.js";
import { assignLoads } from "./assign.js";
import { assumptionsOf } from "./assumptions.js";
import { bathAdvice } from "./bath-advice.js";
import { type BathRun, dyeAmountInWords, runBath } from "./bath-plan.js";
import { bathUse } from "./bath-use.js";
import { type CautionFacts, cautions } from "./cautions.js";
import { dipFaults } from "./dip-faults.js";
import type { Batch, Dye, Order } from "./model.js";
import { planBath, windowOf } from "./plan-bath.js";
import { planLives, topUpRules } from "./plan-lives.js";
import type { Plan, PlanOrder } from "./plan-model.js";
import { implausible } from "./plausible.js";
import { bathRestsOn, restsOnAny } from "./rests-on-assumed.js";
import { timeline } from "./timeline.js";

const isError = (fault: Fault): boolean => fault.severity === "error";

/** Models of all dyes that orders ask for, and what each order aims at. */
function aims(
  batch: Batch,
  modelOf: ModelOf,
  aimOf: AimOf,
): Outcome<{ models: Map<Dye, DyeModel>; aims: ShadeAim[] }> {
  const models = new Map<Dye, DyeModel>();
  const found: ShadeAim[] = [];
  const faults: Fault[] = [];
  const failedDyes = new Set<Dye>();
  for (const order of batch.orders) {
    const { dye } = order.shade;
    if (!batch.baths.some((bath) => bath.dye === dye)) {
      faults.push(
        error(
          "no-bath",
          ["orders", order.index],
          `no bath holds dye "${dye.name}", which shade "${order.shade.name}" needs`,
          `add a bath: - { tank: ..., dye: ${dye.name} }`,
        ),
      );
      continue;
    }
    if (!models.has(dye) && !failedDyes.has(dye)) {
      const model = modelOf(dye, batch.handling);
      faults.push(...model.faults);
      if (model.ok) {
        models.set(dye, model.value);
        faults.push(...doubtfulSwatches(model.value));
      } else failedDyes.add(dye);
    }
    const model = models.get(dye);
    if (!model) continue;
    const aim = aimOf(model, order.shade, order.base);
    faults.push(...aim.faults);
    if (aim.ok) found[order.index] = aim.value;
  }
  return faults.some(isError) ? failed(...faults) : done({ models, aims: found }, faults);
}

/** Leave-one-out error over which readings are off by 2 and more per axis, by the simulation of invented dyes [CIEDE2000]. */
const foretellsBadly = 2.5;

function doubtfulSwatches({ dye, chosen }: DyeModel): Fault[] {
  const own = chosen?.tried.find(({ law }) => law === chosen.curve.law);
  if (own === undefined || own.median <= foretellsBadly) return [];
  return [
    warning(
      "swatches-doubtful",
      ["dyes", dye.name, "swatches"],
      `the swatches of dye "${dye.name}" do not fit together: from the others each is foretold to ${own.median.toFixed(1)} CIEDE2000 only, so its times are rough`,
      "read them again under one light, or dip new ones; a phone is off by 0.5 to 2 and more",
    ),
  ];
}

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
    run.loads.map(({ plan, result }) => {
      const aim = aimOf[plan.order.index]!;
      return {
        plan,
        result,
        window: windowOf(run.setting, aim, result.strengthDuring),
        freshSeconds: run.setting.timer(plan.depth, 1),
      };
    }),
  );

const addedDye = (run: BathRun): number =>
  run.loads.reduce((sum, { result }) => sum + (result.topUp?.dye ?? 0), 0);

/** How a plan is worked where many are wanted: results are the same, less of what nobody reads. */
export interface PlanWork {
  /** A `dyeMemory` where many batches hold the same dyes. */
  readonly modelOf?: ModelOf;
  /** An `aimMemory` likewise. */
  readonly aimOf?: AimOf;
  /** Bath lives under all top-up rules with advice on them, or under each bath's own only, which is all that costs need. */
  readonly lives?: "all" | "own";
}

/**
 * The whole run sheet of a batch: make-up, loads and times, top-ups, the day, costs, cautions.
 * Errors where an order cannot be dyed, a heater cannot reach its temperature, or a bath is too weak.
 */
export function planBatch(
  batch: Batch,
  { modelOf = dyeModel, aimOf: findAim = aimAt, lives: which = "all" }: PlanWork = {},
): Outcome<Plan> {
  const aimed = aims(batch, modelOf, findAim);
  if (!aimed.ok) return aimed;
  const { models, aims: aimOf } = aimed.value;
  const assigned = assignLoads(batch, (order) => {
    const { depth, window } = aimOf[order.index]!;
    return { depth, leastDepth: window?.from };
  });
  const shades = batch.orders.map((order) => aimFaults(order, aimOf[order.index]!));
  const idle = batch.baths.filter((bath) => assigned.loads.get(bath)!.length === 0);
  const runs = batch.baths
    .filter((bath) => !idle.includes(bath))
    .map((bath) => runBath(bath, batch, models.get(bath.dye)!, assigned.loads.get(bath)!));
  const faults = [
    ...aimed.faults,
    ...assigned.faults,
    ...(assigned.faults.some(isError)
      ? []
      : idle.map((bath) =>
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
  ];
  if (faults.some(isError)) return failed(...faults);

  const lives = runs.map((run) => planLives(batch, run, which === "own" ? [run.bath.topUp] : topUpRules));
  const day = timeline(
    runs.map((run) => ({
      bath: run.bath,
      heatingMinutes: run.heating.minutes ?? undefined,
      loads: run.loads.map(({ plan, result }, i) => ({
        load: i + 1,
        parts: plan.parts,
        minutes: result.cycleSeconds / 60,
      })),
    })),
    batch,
  );
  const uses = hasMoney(batch) ? runs.map((run, i) => bathUse(batch, run, lives[i]!)) : undefined;
  const shared = partItems(batch, assigned.started, day.dryerRuns);
  const items = uses && [...shared, ...uses.flatMap(bathItems)];
  const sheets = items && allocate(items, batch.orders.length);
  const orders = batch.orders.map((order) =>
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
    runs.map(({ bath }) => bath.dye),
    batch.handling,
  );
  const plan: Plan = {
    batch: batch.name,
    date: batch.date ?? null,
    currency: batch.currency ?? null,
    startAtMinute: batch.startAtMinute ?? null,
    baths: runs.map((run, i) =>
      planBath(run, lives[i]!, aimOf, which === "own" ? undefined : bathAdvice(batch, run, lives[i]!)),
    ),
    rinsing: {
      drainSeconds: batch.handling.drainSeconds,
      rinseSeconds: batch.handling.rinseSeconds,
      rinseWaterL: batch.handling.rinseWaterL,
    },
    dryer: dryer
      ? { name: dryer.name, capacity: dryer.capacity, celsius: dryer.celsius, minutes: dryer.minutes }
      : null,
    timeline: day.entries,
    orders: orders.map((order) => order.value),
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
        (dryer ? (day.dryerRuns * dryer.powerW * dryer.duty * dryer.minutes) / 60_000 : 0),
      restsOnAssumed,
    },
    restsOnAssumed,
    colours: uses
      ? colourCosts(
          batch,
          uses,
          allocate(shared, batch.orders.length).map(sheetTotal),
          orders.map((order) => order.value),
        )
      : [],
    prices: pricesOf(batch),
    notCounted: items ? notCounted(batch) : [],
    exceeded,
    assumptions: assumptionsOf(batch, models, aimOf),
    advice: runs.flatMap(({ bath, loads }, i) =>
      adviceFor(
        i + 1,
        bath.dye.celsius,
        loads.map(({ plan }) => plan.order.part),
      ),
    ),
    cautions: cautions(cautionFacts(batch)),
    warnings: faults,
  };
  return done(plan, faults);
}

const cautionFacts = ({ baths, dryers, room }: Batch): CautionFacts => ({
  celsius: Math.max(...baths.map((bath) => bath.dye.celsius)),
  roomCelsius: room.celsius,
  agitation: baths.some((bath) => bath.tank.agitationW > 0),
  drying: dryers.length > 0,
  powder: baths.some((bath) => bath.dye.dilution.kind === "powder"),
});

/** Holding and agitation over the loads of a bath. */
function workingKwh({ bath, heating, loads }: BathRun): number {
  const holdingW = Math.min(heating.holdingW, bath.tank.heaterW ?? heating.holdingW);
  return loads.reduce(
    (sum, { result }) =>
      sum + (holdingW * result.cycleSeconds + bath.tank.agitationW * result.seconds) / 3_600_000,
    0,
  );
}

function planOrder(
  batch: Batch,
  order: Order,
  aim: ShadeAim,
  started: number,
  lines: PlanOrder["lines"] | undefined,
): { value: PlanOrder; faults: readonly Fault[] } {
  const total = lines ? sheetTotal(lines) : null;
  const costPerPart = total === null ? null : total / order.quantity;
  const value: PlanOrder = {
    order: order.index + 1,
    part: order.part.name,
    shade: order.shade.name,
    base: order.base?.name ?? null,
    reachable: aim.reachable,
    quantity: order.quantity,
    started,
    costPerPart,
    total,
    lines: lines ?? null,
    otherBases: otherBases(order, { costPerPart, started, quantity: order.quantity }, batch.pricing),
    restsOnAssumed: bathRestsOn(order.shade.dye, batch.handling),
  };
  // What does not come out as ordered has no price.
  if (!batch.pricing || costPerPart === null || !aim.reachable) return { value, faults: [] };
  const price = sellingPrice({ cost: costPerPart, ...batch.pricing });
  return price.ok
    ? { value: { ...value, netPrice: price.value.netPrice, price: price.value.price }, faults: [] }
    : { value, faults: price.faults };
}

function overLimit(batch: Batch, order: PlanOrder): Fault[] {
  const limit = batch.limits.costPerPart;
  if (limit === undefined || order.costPerPart === null || order.costPerPart <= limit) return [];
  const amount = (value: number): string =>
    batch.currency === undefined ? value.toFixed(2) : `${moneyText(value, batch.currency)} ${batch.currency}`;
  return [
    warning(
      "over-limit",
      ["limits", "costPerPart"],
      `order ${order.order} (${order.part}, ${order.shade}) costs ${amount(order.costPerPart)} a part, over the limit of ${amount(limit)}`,
    ),
  ];
}
