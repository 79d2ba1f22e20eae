import fc from "fast-check";
import { expect, test } from "vitest";
import { evaporationKgPerH } from "../../../src/core/bath/heat/heating.js";
import { TankHeats } from "../../../src/core/bath/heat/tank-heats.js";
import { coldPerHot, waterDensityKgM3 } from "../../../src/core/bath/water.js";
import type { Batch, Room, Tank } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan } from "../../../src/core/plan/plan-model.js";
import { SharedWork } from "../../../src/core/plan/run/shared-work.js";
import { figureOfDye } from "../../../src/core/quantity/dye/dye-figures.js";
import { plain } from "../../../src/report/format/paint.js";
import { text } from "../../../src/report/format/text.js";
import { planReport } from "../../../src/report/plan/report.js";
import { planRows } from "../../../src/report/plan/rows.js";
import { batches } from "./arbitrary.js";
import { batch, bath, handling, isothermal, light, order, tank, tray } from "./sample.js";

function planned(input: Batch, shared?: SharedWork): Plan {
  const plan = planBatch(input, shared);
  if (!plan.ok) throw new Error(plan.faults.map(({ message }) => message).join("; "));
  return plan.value;
}

/** Baths that keep the heat of their tanks, or lose it: heaters from just strong enough to endless. */
const heated: fc.Arbitrary<Batch> = fc
  .record({
    input: batches,
    heaterW: fc.option(fc.integer({ min: 900, max: 8000 }), { nil: undefined }),
    topUpCelsius: fc.integer({ min: 10, max: 80 }),
    kept: fc.option(fc.record({ share: fc.double({ min: 0.6, max: 1, noNaN: true }) }), { nil: undefined }),
    tending: fc.option(
      fc.record({
        topUpSeconds: fc.integer({ min: 0, max: 120 }),
        rinseChangeSeconds: fc.integer({ min: 0, max: 120 }),
        rinseEvery: fc.integer({ min: 1, max: 4 }),
      }),
      { nil: {} },
    ),
  })
  .map(({ input, heaterW, topUpCelsius, kept, tending }) => ({
    ...input,
    handling: { ...input.handling, topUpCelsius, ...tending },
    baths: input.baths.map((one) => {
      const { heaterW: _, ...bare } = one.tank;
      return {
        ...one,
        tank: heaterW === undefined ? bare : { ...bare, heaterW },
        ...(kept === undefined
          ? {}
          : {
              start: {
                kind: "kept" as const,
                volumeL: kept.share * one.tank.volumeL,
                strength: 0.9,
                ageDays: 1,
                areaDm2: 50,
              },
            }),
      };
    }),
  }));

test("heat is conserved: what heater and stirring give is in bath, parts and top-ups, or lost, to 1e-9", () => {
  let done = 0;
  fc.assert(
    fc.property(heated, (input) => {
      const plan = planBatch(input);
      if (!plan.ok) return;
      for (const { energyBalance: e, tank: name, dyeBalance: d } of plan.value.baths) {
        done++;
        const { heaterEfficiency } = input.tanks.find((one) => one.name === name)!;
        const given = heaterEfficiency * e.heaterKwh + e.agitationKwh;
        const used = e.bathKwh + e.partsKwh + e.topUpKwh + e.lostKwh;
        expect(Math.abs(given - used)).toBeLessThan(1e-9 * Math.max(1, given));
        const dye = (of: "start" | "added" | "takenUp" | "draggedOut" | "left") =>
          figureOfDye(d, of) as number;
        const all = dye("start") + dye("added");
        expect(Math.abs(all - dye("takenUp") - dye("draggedOut") - dye("left"))).toBeLessThan(
          1e-9 * Math.max(1, all),
        );
      }
    }),
    { numRuns: 60, seed: 14, endOnFailure: true },
  );
  expect(done).toBeGreaterThan(30);
});

/** Tanks whose baths are followed in steps half as long. */
class HalfSteps extends TankHeats {
  override at(of: Tank, celsius: number, room: Room) {
    const heat = super.at(of, celsius, room);
    const { share, kelvin } = heat.working.step;
    return { ...heat, working: { ...heat.working, step: { share: share / 2, kelvin: kelvin / 2 } } };
  }
}

/** All figures of a plan's baths, by their path. */
function figuresOf(value: unknown, path = "", found = new Map<string, number>()): Map<string, number> {
  if (typeof value === "number") found.set(path, value);
  else if (typeof value === "object" && value !== null)
    for (const [key, child] of Object.entries(value)) figuresOf(child, `${path}.${key}`, found);
  return found;
}

const halved = () => Object.assign(new SharedWork(), { heats: new HalfSteps() });

test("steps half as long change no time by a hundredth of a second, and nothing else by five millionths", () => {
  let compared = 0;
  fc.assert(
    fc.property(heated, (input) => {
      const [plan, finer] = [planBatch(input), planBatch(input, halved())];
      expect(finer.ok).toBe(plan.ok);
      if (!plan.ok || !finer.ok) return;
      const other = figuresOf(finer.value.baths);
      for (const [path, value] of figuresOf(plan.value.baths)) {
        compared++;
        const most = /Seconds$/.test(path) ? 0.01 : 5e-6 * Math.max(1e-3, Math.abs(value));
        // A life of ten thousand loads may end one load earlier.
        if (!path.includes(".life.")) expect(Math.abs(other.get(path)! - value)).toBeLessThan(most);
      }
    }),
    // A failure is not made smaller: each try takes its time.
    { numRuns: 25, seed: 14, endOnFailure: true },
  );
  expect(compared).toBeGreaterThan(3000);
});

test("steps half as long change no printed digit, of the sample batch nor of random ones", () => {
  const printed = (of: Plan): unknown => {
    const { columns, rows } = planRows(of);
    return [
      text(planReport(of).blocks, 80, plain),
      rows.map((row) => row.map((cell, i) => (typeof cell === "number" ? columns[i]!.digits!(cell) : cell))),
    ];
  };
  const inputs = [
    ...[500, 900, 2000].map((heaterW) => ({ ...batch, baths: [{ ...bath, tank: { ...tank, heaterW } }] })),
    ...fc.sample(heated, { numRuns: 40, seed: 77 }),
  ];
  let compared = 0;
  for (const input of inputs) {
    const [plan, finer] = [planBatch(input), planBatch(input, halved())];
    expect(finer.ok).toBe(plan.ok);
    if (!plan.ok || !finer.ok) continue;
    compared++;
    expect(printed(finer.value)).toEqual(printed(plan.value));
  }
  expect(compared).toBeGreaterThan(35);
});

test("with parts that take no heat, warm top-ups and an endless heater the bath works as if it were always hot", () => {
  let loads = 0;
  fc.assert(
    fc.property(batches, (input) => {
      // Without a lid the bath evaporates as fast while it is racked for as while it is dipped in.
      const open = input.baths.map((one) => ({ ...one, tank: { ...one.tank, cover: "none" as const } }));
      const steady = isothermal({ ...input, baths: open });
      const plan = planBatch(steady);
      if (!plan.ok) return;
      for (const [i, { loads: worked, startTopUp }] of plan.value.baths.entries()) {
        const one = steady.baths.find(({ index }) => index === plan.value.baths[i]!.bath)!;
        const { dye, tank: holder } = one;
        const perSecondL =
          evaporationKgPerH(holder, dye.celsius, steady.room, "dipping") /
          3600 /
          (waterDensityKgM3(dye.celsius) / 1000);
        expect(startTopUp).toBeNull();
        for (const load of worked) {
          loads++;
          expect(load.waitSeconds).toBe(0);
          expect([load.celsiusBefore, load.celsiusAfter]).toEqual([dye.celsius, dye.celsius]);
          const drained = (steady.handling.dragOutMlPerDm2 * load.areaDm2) / 1000;
          expect(load.evaporatedL / (perSecondL * load.cycleSeconds)).toBeCloseTo(1, 5);
          const pouredL =
            load.topUp === null
              ? 0
              : (load.topUp.waterMl + ("concentrateMl" in load.topUp ? load.topUp.concentrateMl : 0)) /
                1000 /
                coldPerHot(dye.celsius, steady.room.celsius);
          expect(load.volumeAfterL).toBeCloseTo(load.volumeBeforeL - drained - load.evaporatedL + pouredL, 9);
        }
      }
    }),
    { numRuns: 60, seed: 14, endOnFailure: true },
  );
  expect(loads).toBeGreaterThan(200);
});

test("cold parts lengthen dips: 35 of 8 g in 6 L by 1.1 K, which costs about 8 % of the time at first", () => {
  // By the method of mixtures: 35 × 8 g × 1.7 J/(g K) into 6 L × 0.9718 kg/L × 4186 J/(kg K) of 80 °C.
  const parts = 35 * 8 * 1.7;
  const mixed = (6 * 0.9718 * 4186 * 80 + parts * 20) / (6 * 0.9718 * 4186 + parts);
  expect(mixed).toBeCloseTo(78.85, 2);
  const cap = { ...tray, massG: 8, areaDm2: 0.5, volumeCm3: 8.6, perLoad: 35 };
  const holder = { ...tank, heaterW: 480, agitationW: 0, capacityL: 8 };
  const { loads } = planned({
    ...batch,
    yield: 1,
    baths: [{ ...bath, tank: holder }],
    handling: { ...handling, liquorRatioLPerKg: 20 },
    orders: [order(0, cap, light, 35)],
  }).baths[0]!;
  const warm = planned(
    isothermal({
      ...batch,
      yield: 1,
      baths: [{ ...bath, tank: holder }],
      orders: [order(0, cap, light, 35)],
    }),
  ).baths[0]!.loads;
  const longer = loads[0]!.dipSeconds / warm[0]!.dipSeconds;
  // 75 kJ/mol at 353 K: 7.2 % a kelvin; the heater brings a little of it back.
  expect(longer).toBeGreaterThan(1.06);
  expect(longer).toBeLessThan(1.09);
});

test("a kept bath that starts low is filled before it is heated, and heats from what that leaves", () => {
  const start = { kind: "kept" as const, volumeL: 5, strength: 1, ageDays: 3, areaDm2: 100 };
  const of = (topUpCelsius: number, topUp: "none" | "level") =>
    planned({
      ...batch,
      handling: { ...handling, topUpCelsius },
      baths: [{ ...bath, start, topUp }],
      orders: [order(0, tray, light, 4)],
    }).baths[0]!;
  const cold = of(20, "level");
  // A litre hot is 0.9736 L cold, a tenth of it concentrate.
  expect(cold.startTopUp).toMatchObject({ celsius: 20 });
  expect(figureOfDye(cold.startTopUp!, "amount")).toBeCloseTo(97.36, 1);
  expect(cold.startTopUp!.waterMl).toBeCloseTo(876.2, 0);
  expect(cold.loads[0]!.volumeBeforeL).toBe(6);
  // A sixth of it at 60 °C warms it by 6.7 K.
  const warm = of(60, "level");
  expect(warm.heating.minutes! / cold.heating.minutes!).toBeGreaterThan(0.88);
  expect(warm.heating.minutes! / cold.heating.minutes!).toBeLessThan(0.93);
  const low = of(20, "none");
  expect(low.startTopUp).toBeNull();
  expect(low.loads[0]!.volumeBeforeL).toBe(5);
  expect(low.heating.minutes!).toBeLessThan(cold.heating.minutes!);
});

test("what cooling leaves goes onto the jug and into the next batch", () => {
  const { carryOver, coolMinutes, loads, leftL } = planned(batch).baths[0]!;
  const last = loads.at(-1)!;
  expect(coolMinutes!).toBeGreaterThan(30);
  expect(leftL).toBeLessThan(last.volumeAfterL);
  expect(carryOver!.volumeL).toBe(leftL);
  expect(carryOver!.coldVolumeL / leftL).toBeCloseTo(coldPerHot(80, 20), 12);
  // Only water left: dye is as much as it was.
  expect(carryOver!.strength * leftL).toBeCloseTo(last.strengthAfter * last.volumeAfterL, 9);
  const dumped = planned({ ...batch, baths: [{ ...bath, after: "dump" }] }).baths[0]!;
  expect(dumped.carryOver).toBeNull();
  expect(dumped.loads.at(-1)!.topUp).toBeNull();
});

test("a trial that reads what the plan foretells changes no time, also where parts cool the bath and it is filled first", () => {
  const swatches = [
    { seconds: 15, colour: { kind: "lab" as const, lab: [80.2, 21.7, 9.8] as const } },
    { seconds: 30, colour: { kind: "lab" as const, lab: [73.5, 33.0, 15.9] as const } },
    { seconds: 60, colour: { kind: "lab" as const, lab: [65.9, 44.6, 23.0] as const } },
    { seconds: 180, colour: { kind: "lab" as const, lab: [55.2, 55.9, 31.8] as const } },
  ];
  const { ratePerSecond: _, ...rest } = batch.dyes[0]!;
  const coral = {
    ...rest,
    law: "parabolic" as const,
    uptakePerDm2: 1e-9,
    base: { name: "white", lab: [92.1, -0.6, -2.3] as const },
    swatches,
  };
  const shade = { name: "asked", dye: coral, target: { kind: "time" as const, seconds: 45 }, tolerance: 1.5 };
  const cap = { ...tray, massG: 8, areaDm2: 0.5, volumeCm3: 8.6, perLoad: 35 };
  for (const start of [
    { kind: "fresh" as const },
    { kind: "kept" as const, volumeL: 4, strength: 0.6, ageDays: 1, areaDm2: 0 },
  ]) {
    const worked = (trial?: {
      seconds: number;
      colour: { kind: "lab"; lab: readonly [number, number, number] };
    }) =>
      planned({
        ...batch,
        yield: 1,
        baths: [
          {
            ...bath,
            dye: coral,
            start,
            tank: { ...tank, heaterW: 500 },
            ...(trial === undefined ? {} : { trial }),
          },
        ],
        orders: [order(0, cap, shade, 70)],
      }).baths[0]!.loads;
    const before = worked();
    // 45 s in a fresh bath at its temperature.
    const after = worked({ seconds: 45, colour: { kind: "lab", lab: before[0]!.lab! } });
    for (const [i, load] of after.entries())
      expect(load.dipSeconds / before[i]!.dipSeconds).toBeCloseTo(1, 3);
  }
});
