import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { loadSize, partsToStart } from "../../../src/core/bath/load/load-size.js";
import { costLines } from "../../../src/core/cost/line/cost-lines.js";
import type { Batch } from "../../../src/core/model/batch.js";
import { mostLoads } from "../../../src/core/plan/assign/assign.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan, PlanBath } from "../../../src/core/plan/plan-model.js";
import { batches } from "./arbitrary.js";
import { batch, bath, deep, dye, handling, hook, isothermal, light, order, tank, tray } from "./sample.js";

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const close = (a: number, b: number): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(a), Math.abs(b)));

function planned(input: Batch): Plan {
  const plan = planBatch(input);
  if (!plan.ok) throw new Error(plan.faults.map((fault) => fault.message).join("; "));
  return plan.value;
}

const seed = 20261125;
const runs = 100;
/** The random batches with their plans, which several tests look at. */
const drawn = fc.sample(batches, { numRuns: runs, seed }).map((input) => ({ input, plan: planBatch(input) }));

/** Runs a check on every random batch that can be dyed at all, and sees to it that most can. */
function forAllPlans(check: (plan: Plan, input: Batch) => void): void {
  let done = 0;
  for (const { input, plan } of drawn)
    if (plan.ok) {
      done++;
      check(plan.value, input);
    } else
      for (const fault of plan.faults)
        if (fault.severity === "error")
          expect(["too-little-dye", "too-little-liquor", "part-too-large", "margin-and-fees"]).toContain(
            fault.code,
          );
  expect(done).toBeGreaterThan(runs / 2);
}

const faults = (input: Batch): string[] => planBatch(input).faults.map((fault) => fault.code);
const errors = (input: Batch): string[] =>
  planBatch(input)
    .faults.filter((fault) => fault.severity === "error")
    .map((fault) => fault.code);
const amounts = ({ dyeBalance: b }: PlanBath): readonly number[] =>
  "startMl" in b
    ? [b.startMl, b.addedMl, b.takenUpMl, b.draggedOutMl, b.leftMl]
    : [b.startG, b.addedG, b.takenUpG, b.draggedOutG, b.leftG];

describe("planBatch over random batches", () => {
  test("conserves dye: start + added = taken up + dragged out + left", () => {
    forAllPlans((plan) => {
      for (const planBath of plan.baths) {
        const [start, added, taken, dragged, left] = amounts(planBath) as [
          number,
          number,
          number,
          number,
          number,
        ];
        close(start + added, taken + dragged + left);
      }
    });
  });

  test("allocates every line so that the orders add up to what was paid", () => {
    forAllPlans((plan) => {
      close(sum(plan.orders.map((row) => row.total!)), plan.totals.cost!);
      for (const line of costLines)
        close(sum(plan.orders.map((row) => row.lines![line])), plan.totals.lines![line]);
      for (const row of plan.orders) close(row.total!, row.costPerPart! * row.quantity);
    });
  });

  test("makes no load larger than any limit allows", () => {
    forAllPlans((plan, input) => {
      for (const [i, planBath] of plan.baths.entries()) {
        const holder = input.baths.filter((candidate) => candidate.tank.name === planBath.tank)[0]!.tank;
        expect(plan.baths[i]!.loads.length).toBeGreaterThan(0);
        for (const load of planBath.loads) {
          const { part } = input.orders[load.order - 1]!;
          expect(load.parts).toBeLessThanOrEqual(
            loadSize(part, holder, input.handling, load.volumeBeforeL).parts,
          );
          expect(load.parts).toBeLessThanOrEqual(part.perLoad ?? Number.POSITIVE_INFINITY);
          // A bath within 2 % of its mark counts as full.
          const liquorL = load.volumeBeforeL >= 0.98 * holder.volumeL ? holder.volumeL : load.volumeBeforeL;
          expect(load.parts * part.volumeCm3).toBeLessThanOrEqual(
            1000 * (holder.capacityL * 0.95 - liquorL) + 1e-6,
          );
          expect((load.parts * part.massG * 20) / 1000).toBeLessThanOrEqual(liquorL + 1e-9);
        }
      }
    });
  });

  test("dips every started part once, and starts enough for the good ones", () => {
    forAllPlans((plan, input) => {
      for (const row of plan.orders) {
        const dipped = plan.baths
          .flatMap((planBath) => planBath.loads)
          .filter((load) => load.order === row.order);
        expect(sum(dipped.map((load) => load.parts))).toBe(row.started);
        expect(row.started * input.yield).toBeGreaterThanOrEqual(row.quantity - 1e-6);
        expect((row.started - 1) * input.yield).toBeLessThan(row.quantity);
      }
    });
  });

  test("dips lighter shades first in every bath, and never a weaker bath for less time at one depth", () => {
    forAllPlans((plan) => {
      for (const { loads } of plan.baths)
        for (const [i, load] of loads.entries()) {
          const before = loads[i - 1];
          if (!before) continue;
          expect(load.depth).toBeGreaterThanOrEqual(before.depth);
          if (
            load.depth === before.depth &&
            load.parts === before.parts &&
            load.part === before.part &&
            load.strengthBefore <= before.strengthBefore &&
            // A fuller bath is weakened less by the same parts.
            load.volumeBeforeL <= before.volumeBeforeL &&
            // A cooler bath needs longer whatever its strength.
            load.celsiusBefore <= before.celsiusBefore
          )
            expect(load.dipSeconds).toBeGreaterThanOrEqual(before.dipSeconds - 1e-9);
        }
    });
  });

  test("gives the operator one thing at a time and the dryer one run at a time", () => {
    forAllPlans((plan, input) => {
      const hands = plan.timeline.filter(({ what }) => what !== "heat" && what !== "dry" && what !== "cool");
      const dryer = plan.timeline.filter((entry) => entry.what === "dry");
      for (const row of [hands, dryer])
        for (const [i, entry] of row.entries())
          if (i > 0) expect(entry.startMinute).toBeGreaterThanOrEqual(row[i - 1]!.endMinute - 1e-9);
      for (const run of dryer) expect(run.parts).toBeLessThanOrEqual(input.dryers[0]!.capacity);
      expect(sum(dryer.map((run) => run.parts!))).toBe(plan.totals.started);
      expect(plan.totals.dryerRuns).toBe(Math.ceil(plan.totals.started / input.dryers[0]!.capacity));
      for (const heat of plan.timeline.filter((entry) => entry.what === "heat")) {
        const dips = plan.timeline.filter((entry) => entry.what === "dip" && entry.tank === heat.tank);
        expect(Math.min(...dips.map((dip) => dip.startMinute))).toBeCloseTo(heat.endMinute, 9);
      }
    });
  });
});

describe("partsToStart", () => {
  test("starts exactly the quantity at full yield and 100 for 97 at 97 %", () => {
    expect(partsToStart(17, 1)).toBe(17);
    expect(partsToStart(97, 0.97)).toBe(100);
  });
});

describe("loadSize", () => {
  test("says which limit binds", () => {
    expect(loadSize(hook, tank, handling)).toEqual({ parts: 24, boundBy: "perLoad" });
    expect(loadSize(tray, tank, handling)).toEqual({ parts: 9, boundBy: "liquorRatio" });
    expect(loadSize({ massG: 1, volumeCm3: 84 }, tank, handling)).toEqual({
      parts: 10,
      boundBy: "freeboard",
    });
  });
});

describe("planBatch", () => {
  test("splits 100 parts at 24 a load into five loads of 20", () => {
    const loads = planned(batch).baths[0]!.loads.filter((load) => load.part === "hook");
    expect(loads.map((load) => load.parts)).toEqual([20, 20, 20, 20, 20]);
  });

  test("works loads of two tanks with one dye on the tank with the smaller dyed area per litre", () => {
    const big = { ...tank, name: "twelve", volumeL: 12, capacityL: 14.4 };
    const plan = planned({
      ...batch,
      tanks: [tank, big],
      baths: [bath, { ...bath, index: 1, tank: big }],
      orders: [order(0, hook, light, 97)],
    });
    // 100 parts, 20 a load: six (0/6 L), twelve, twelve (8.2/12 < 8.2/6), six on a tie, twelve.
    expect(plan.baths.map((row) => row.loads.length)).toEqual([2, 3]);
  });

  test("finds a time that gives exactly the depth at the mean strength of the dip", () => {
    const plan = planned(isothermal({ ...batch, orders: [order(0, hook, light, 1)], yield: 1 }));
    const load = plan.baths[0]!.loads[0]!;
    // One hook: u = 0.03 x 0.41 x D mL of 584.14; t = -ln(1 - D g(tref)/s)/k by hand.
    const g = (t: number) => 1 - Math.exp(-0.012 * t);
    const depth = g(30) / g(300);
    const strength = 1 - (0.03 * 0.41 * depth) / (0.1 * 6000 * (971.7978 / 998.2041)) / 2;
    expect(load.depth).toBeCloseTo(depth, 12);
    expect(load.dipSeconds).toBeCloseTo(-Math.log(1 - (depth * g(300)) / strength) / 0.012, 6);
  });

  test("gives no costs where no money is given, and says what is not counted where some is", () => {
    const { pricing: _, ...rest } = batch;
    const bare = {
      ...rest,
      rates: {},
      consumables: { perBath: 0, perLoad: 0, perPart: 0 },
      dyes: [{ ...dye, price: undefined as never }],
      parts: [{ ...hook, blank: undefined as never }],
      tanks: [],
      dryers: [],
    };
    const plan = planned(bare);
    expect(plan.totals.cost).toBeNull();
    expect(plan.orders[0]!.costPerPart).toBeNull();
    const partly = planned({ ...batch, rates: { labourPerHour: 34 } });
    expect(partly.notCounted).toEqual(["water", "electricity", "disposal of spent liquor"]);
  });

  test("exceeds a limit on the cost per part with a fault per order", () => {
    expect(planned({ ...batch, limits: { costPerPart: 3 } }).exceeded.map((fault) => fault.code)).toEqual([
      "over-limit",
    ]);
    expect(planned({ ...batch, limits: { costPerPart: 10 } }).exceeded).toEqual([]);
  });

  test("refuses a heater that cannot reach the bath's temperature, and says what a lid would do", () => {
    const weak = { ...tank, heaterW: 400, cover: "none" as const };
    const plan = planBatch({ ...batch, baths: [{ ...bath, tank: weak }] });
    expect(plan.ok).toBe(false);
    expect(plan.faults[0]).toMatchObject({ code: "heater-too-weak", path: ["tanks", "six", "heater"] });
    expect(plan.faults[0]!.help).toMatch(/with a lid .* it reaches 80 °C in \d+ min/);
  });

  test("warns where loads wait for the heater, from five minutes in all on, and says what would shorten it", () => {
    const slow = (heaterW: number, quantity: number) =>
      planBatch({
        ...batch,
        baths: [{ ...bath, tank: { ...tank, heaterW, agitationW: 0 } }],
        orders: [order(0, tray, light, quantity)],
      }).faults.find(({ code }) => code === "heater-slow");
    expect(slow(2000, 60)).toBeUndefined();
    expect(slow(400, 60)!.message).toMatch(
      /^the 400 W heater of tank "six" does not keep up: loads of "coral" wait/,
    );
    expect(slow(400, 60)!.help).toMatch(/a heater of 600 W \(.*\) would shorten that$/);
  });

  test("refuses a shade whose dye no bath holds, a part no tank takes, a bath with less dye than a load takes up", () => {
    expect(errors({ ...batch, baths: [{ ...bath, dye: { ...dye, name: "other" } }] })).toEqual([
      "no-bath",
      "no-bath",
    ]);
    expect(faults({ ...batch, orders: [order(0, { ...tray, massG: 400 }, deep, 1)] })).toEqual([
      "part-too-large",
    ]);
    const weak = { kind: "kept" as const, volumeL: 6, strength: 1e-4, ageDays: 0, areaDm2: 0 };
    expect(errors({ ...batch, baths: [{ ...bath, start: weak }] })).toEqual(["too-little-dye"]);
  });

  test("warns of a stock that runs short, a large load, a dip too short or too long, a spent bath, an idle bath", () => {
    expect(
      faults({
        ...batch,
        dyes: [{ ...dye, stock: 500 }],
        baths: [{ ...bath, dye: { ...dye, stock: 500 } }],
        orders: [order(0, hook, { ...light, dye: { ...dye, stock: 500 } }, 4)],
      }),
    ).toEqual(["no-bath"]);
    const short = { ...dye, stock: 500 };
    const withShort = {
      ...batch,
      dyes: [short],
      baths: [{ ...bath, dye: short }],
      orders: [order(0, hook, { ...light, dye: short }, 4)],
    };
    expect(faults(withShort)).toContain("stock-short");
    const thirsty = { ...dye, uptakePerDm2: 60 };
    expect(
      faults({
        ...batch,
        baths: [{ ...bath, dye: thirsty }],
        orders: [order(0, hook, { ...light, dye: thirsty }, 24)],
      }),
    ).toContain("large-load");
    expect(faults({ ...batch, handling: { ...handling, shortestSeconds: 45 } })).toContain("dip-too-short");
    expect(faults({ ...batch, handling: { ...handling, longestSeconds: 110 } })).toContain("dip-too-long");
    const worn = { kind: "kept" as const, volumeL: 6, strength: 0.6, ageDays: 0, areaDm2: 0 };
    expect(
      faults({
        ...batch,
        baths: [{ ...bath, start: worn, topUp: "none" }],
        handling: { ...handling, dragOutMlPerDm2: 40, longestSeconds: 400 },
        orders: [order(0, tray, deep, 40)],
      }),
    ).toContain("bath-nearly-spent");
    const idle = { ...bath, index: 1, dye: { ...dye, name: "idle" }, tank: { ...tank, name: "twelve" } };
    expect(faults({ ...batch, baths: [bath, idle] })).toContain("idle-bath");
  });

  test("cleans and sets up a tank again between two baths in it", () => {
    const navy = { ...dye, name: "navy" };
    const dark = { ...deep, name: "dark", dye: navy };
    const plan = planned({
      ...batch,
      dyes: [dye, navy],
      baths: [bath, { ...bath, index: 1, dye: navy }],
      orders: [order(0, hook, light, 10), order(1, hook, dark, 10)],
    });
    const tasks = plan.timeline
      .filter((entry) => entry.tank === "six" && entry.what !== "heat")
      .map((entry) => entry.what);
    expect(tasks).toEqual(["set up", "dip", "cool", "clean up", "set up", "dip", "cool", "clean up"]);
  });

  test("plans 1,000 orders", () => {
    const orders = Array.from({ length: 1000 }, (_, i) =>
      order(i, i % 2 ? hook : tray, i % 3 ? light : deep, 1 + (i % 40)),
    );
    expect(planned({ ...batch, orders }).orders).toHaveLength(1000);
  });

  test("fills the dryer in waiting time as soon as it is free and a full run waits", () => {
    const navy = { ...dye, name: "navy" };
    const slow = { ...tank, name: "slow", volumeL: 12, capacityL: 14.4, heaterW: 700 };
    const dark = { ...deep, name: "dark", dye: navy };
    const dryer = { ...batch.dryers[0]!, capacity: 40, minutes: 10 };
    const plan = planned({
      ...batch,
      dyes: [dye, navy],
      dryers: [dryer],
      baths: [bath, { ...bath, index: 1, tank: slow, dye: navy }],
      orders: [order(0, hook, light, 97), order(1, hook, dark, 10)],
    });
    // 100 hooks in 20s: 40 and 40 are wet long before the slow bath is hot.
    const second = plan.timeline.filter((entry) => entry.what === "dryer loading")[1]!;
    const slowDip = plan.timeline.find((entry) => entry.what === "dip" && entry.tank === "slow")!;
    expect(second.startMinute).toBeLessThan(slowDip.startMinute);
  });

  test("counts area dyed before in sharing loads between two tanks of one dye", () => {
    const other = { ...tank, name: "other" };
    const used = { kind: "kept" as const, volumeL: 6, strength: 1, ageDays: 0, areaDm2: 1000 };
    const plan = planned({
      ...batch,
      tanks: [tank, other],
      baths: [
        { ...bath, start: used },
        { ...bath, index: 1, tank: other },
      ],
      orders: [order(0, hook, light, 97)],
    });
    expect(plan.baths.map((row) => row.tank)).toEqual(["other"]);
  });

  test("gives a weak bath its time and window, and calls it slow, not too weak", () => {
    const white = { name: "white", lab: [93, -0.3, 0.6] as const };
    const { ratePerSecond: _, ...rest } = dye;
    const brick = {
      ...rest,
      base: white,
      swatches: [
        { seconds: 15, colour: { kind: "lab" as const, lab: [63.6, 29.4, 8.1] as const } },
        { seconds: 60, colour: { kind: "lab" as const, lab: [49.2, 36.9, 12.2] as const } },
        { seconds: 180, colour: { kind: "lab" as const, lab: [41.8, 38.7, 13.9] as const } },
      ],
      shelfLifeDays: 40,
    };
    const shade = {
      name: "mid",
      dye: brick,
      target: { kind: "swatch" as const, seconds: 180 },
      tolerance: 2,
    };
    const weak = { kind: "kept" as const, volumeL: 6, strength: 0.58, ageDays: 50, areaDm2: 0 };
    const plan = planned({
      ...batch,
      baths: [{ ...bath, dye: brick, start: weak, topUp: "none" as const }],
      orders: [order(0, hook, shade, 4)],
    });
    const load = plan.baths[0]!.loads[0]!;
    expect(load.dipSeconds).toBeGreaterThan(180 / 0.58);
    expect(load.dipSeconds).toBeLessThan(1.01 * (180 / 0.58 ** 2));
    expect(load.windowSeconds![0]).toBeLessThan(load.dipSeconds);
    // The colour hardly moves beyond the longest swatch, so the window has no far end.
    expect(load.windowSeconds![1]).toBeNull();
    const codes = plan.warnings.map((fault) => fault.code);
    expect(codes).toContain("bath-too-old");
    expect(codes).toContain("dip-too-long");
  });

  test("says how much to take out of a bath that is too full for its loads, and that a full one cannot be strengthened", () => {
    const full = { kind: "kept" as const, volumeL: 6.8, strength: 0.8, ageDays: 0, areaDm2: 0 };
    const said = planned({
      ...batch,
      baths: [{ ...bath, start: full }],
      orders: [order(0, hook, light, 9)],
    }).warnings;
    expect(said.map((fault) => fault.code)).toEqual(
      expect.arrayContaining(["bath-too-full", "top-up-short"]),
    );
    expect(said.find((fault) => fault.code === "bath-too-full")!.help).toMatch(/^take out 0\.\d\d L first$/);
  });

  test("says that a full bath cannot be strengthened only where it lacks so much dye that a load would be topped up for it", () => {
    const codes = (strength: number): string[] =>
      planned({
        ...batch,
        baths: [
          {
            ...bath,
            topUp: "strength" as const,
            start: { kind: "kept" as const, volumeL: bath.tank.volumeL, strength, ageDays: 0, areaDm2: 0 },
          },
        ],
        orders: [order(0, hook, light, 9)],
      }).warnings.map(({ code }) => code);
    expect(codes(0.979)).toContain("top-up-short");
    expect(codes(0.981)).not.toContain("top-up-short");
  });

  test("lets a bath live on where the liquor ratio sizes its loads and it is topped up", () => {
    const heavy = { ...hook, massG: 100, volumeCm3: 108 };
    const plan = planned({ ...batch, orders: [order(0, heavy, light, 9)], yield: 1 });
    expect(plan.baths[0]!.loads[0]).toMatchObject({ parts: 3, boundBy: "liquorRatio" });
    expect(plan.baths[0]!.life.loads).toBeGreaterThan(1000);
  });

  test("says when each of two baths in one tank is switched on", () => {
    const navy = { ...dye, name: "navy" };
    const dark = { ...deep, name: "dark", dye: navy };
    const plan = planned({
      ...batch,
      dyes: [dye, navy],
      baths: [bath, { ...bath, index: 1, dye: navy }],
      orders: [order(0, hook, light, 10), order(1, hook, dark, 10)],
    });
    const heats = plan.timeline.filter((entry) => entry.what === "heat");
    expect(heats.map((entry) => entry.bath)).toEqual(plan.baths.map((row) => row.bath));
    expect(heats[1]!.startMinute).toBeGreaterThan(heats[0]!.endMinute);
  });

  test("refuses more loads than anyone dips, and works very many", () => {
    const one = { ...hook, perLoad: 1 };
    expect(errors({ ...batch, orders: [order(0, one, light, 1e9)] })).toEqual(["too-many-loads"]);
    expect(errors({ ...batch, orders: [order(0, hook, light, 10)], yield: 1e-9 })).toEqual([
      "too-many-loads",
    ]);
    const many = planned({ ...batch, orders: [order(0, one, light, mostLoads)], yield: 1 });
    expect(many.totals.loads).toBe(mostLoads);
  });

  test("refuses more loads than a plan goes through in all its orders together, at the order with most of them", () => {
    const one = { ...hook, perLoad: 1 };
    const two = (more: number): Batch => ({
      ...batch,
      orders: [order(0, one, light, 5), order(1, one, deep, mostLoads - 5 + more)],
      yield: 1,
    });
    expect(planned(two(0)).totals.loads).toBe(mostLoads);
    expect(planBatch(two(1)).faults).toMatchObject([
      {
        code: "too-many-loads",
        path: ["orders", 1, "quantity"],
        message: `the orders together would take more than the ${mostLoads} loads that one plan goes through; most of them are for ${mostLoads - 4} parts of "hook", at most 1 a load`,
      },
    ]);
  });

  test("counts the loads of a small bath beside a large one", () => {
    const small = { ...bath, index: 1, tank: { ...tank, name: "small", capacityL: 6.3242 } };
    expect(errors({ ...batch, baths: [bath, small], orders: [order(0, hook, light, 80_000)] })).toEqual([
      "too-many-loads",
    ]);
  });

  test("says that a bath is dry where its last load leaves nothing", () => {
    const thirsty = { ...handling, dragOutMlPerDm2: 1000 };
    const dry = {
      ...batch,
      handling: thirsty,
      baths: [{ ...bath, topUp: "none" as const }],
      orders: [order(0, hook, light, 18)],
      yield: 1,
    };
    expect(errors(dry)).toEqual(["bath-dry"]);
  });

  test("warns of a quick dip once for each shade", () => {
    const twice = planned({ ...batch, handling: { ...handling, shortestSeconds: 130 } }).warnings.filter(
      (fault) => fault.code === "dip-too-short",
    );
    expect(twice.map((fault) => /shade "(\w+)"/.exec(fault.message)?.[1])).toEqual(["light", "deep"]);
  });
});
