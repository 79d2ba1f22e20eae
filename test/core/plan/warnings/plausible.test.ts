import { expect, test } from "vitest";
import type { Batch } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { implausible } from "../../../../src/core/plan/warnings/plausible.js";
import { batch, bath, dye, hook, light, order, tank } from "../sample.js";

const codes = (change: Partial<Batch>): string[] =>
  implausible({ ...batch, ...change }).map((fault) => fault.code);

test("implausible is silent on the sample, and names a slip of unit or decimal in tank, heater, dilution and part", () => {
  expect(codes({})).toEqual([]);
  expect(codes({ baths: [{ ...bath, tank: { ...tank, surfaceCm2: 6.45 } }] })).toEqual(["tank-shape"]);
  expect(codes({ baths: [{ ...bath, tank: { ...tank, surfaceCm2: 4500 } }] })).toEqual(["tank-shape"]);
  expect(codes({ baths: [{ ...bath, tank: { ...tank, heaterW: 15_000 } }] })).toEqual(["heater-strong"]);
  expect(
    codes({ baths: [{ ...bath, dye: { ...dye, dilution: { kind: "liquid", fraction: 10 / 11 } } }] }),
  ).toEqual(["dilution-strong"]);
  expect(codes({ orders: [order(0, { ...hook, areaDm2: 0.003 }, light, 1)] })).toEqual(["area-small"]);
  expect(codes({ orders: [order(0, { ...hook, areaDm2: 300 }, light, 1)] })).toEqual(["area-large"]);
});

test("each bound of what is implausible is where its message says", () => {
  const tankOf = (change: Partial<typeof tank>) =>
    codes({ baths: [{ ...bath, tank: { ...tank, ...change } }] });
  const litres = 6;
  const surfaceOf = (depthCm: number) => tankOf({ volumeL: litres, surfaceCm2: (1000 * litres) / depthCm });
  expect([2.99, 3.01, 119, 121].map((depthCm) => surfaceOf(depthCm).length)).toEqual([1, 0, 0, 1]);
  expect([2399, 2401].map((heaterW) => tankOf({ volumeL: litres, heaterW }).length)).toEqual([0, 1]);

  const dilutionOf = (fraction: number) =>
    codes({ baths: [{ ...bath, dye: { ...dye, dilution: { kind: "liquid", fraction } } }] });
  expect([0.499, 0.501].map((fraction) => dilutionOf(fraction).length)).toEqual([0, 1]);

  const areaOf = (areaDm2: number) => codes({ orders: [order(0, { ...hook, areaDm2 }, light, 1)] });
  const wall = (mm: number) => areaOf((20 * hook.volumeCm3) / mm / 100);
  expect([0.199, 0.201].map((mm) => wall(mm).length)).toEqual([1, 0]);
  const ballDm2 = ((36 * Math.PI) ** (1 / 3) * hook.volumeCm3 ** (2 / 3)) / 100;
  expect([0.998, 0.9995].map((share) => areaOf(share * ballDm2).length)).toEqual([1, 0]);
});

test("a ball is allowed the surface of a ball", () => {
  const radiusCm = 1.2;
  const ball = {
    ...hook,
    volumeCm3: (4 / 3) * Math.PI * radiusCm ** 3,
    areaDm2: (4 * Math.PI * radiusCm ** 2) / 100,
  };
  expect(codes({ orders: [order(0, ball, light, 1)] })).toEqual([]);
});

test("planBatch says that a bath runs low, and when swatches disagree or come from a screen", () => {
  const dry = planBatch({
    ...batch,
    baths: [{ ...bath, topUp: "none" }],
    orders: [order(0, hook, light, 40_000)],
  });
  expect(dry.faults.filter((fault) => fault.severity === "error").map((fault) => fault.code)).toEqual([
    "too-little-liquor",
  ]);
  const { ratePerSecond: _, ...rest } = dye;
  const swatch = (seconds: number, hex: string) => ({ seconds, colour: { kind: "hex" as const, hex } });
  const phone = {
    ...rest,
    base: { name: "white", lab: [93, -0.3, 0.6] as const },
    swatches: [swatch(15, "#e08090"), swatch(60, "#d060a0"), swatch(120, "#d8a030"), swatch(180, "#903040")],
  };
  const plan = planBatch({
    ...batch,
    baths: [{ ...bath, dye: phone }],
    orders: [order(0, hook, { ...light, dye: phone }, 4)],
  });
  if (!plan.ok) throw new Error(plan.faults[0]!.message);
  expect(plan.value.warnings.map((fault) => fault.code)).toContain("swatches-doubtful");
  expect(plan.value.assumptions.map(({ code }) => code)).toContain("screen-colour");
});

const told = (change: Partial<Batch>): string[] =>
  implausible({ ...batch, ...change }).map(({ path, help }) => `${path.join(".")}: ${help}`);
const dyeAt = (change: Partial<typeof dye>) => ({ baths: [{ ...bath, dye: { ...dye, ...change } }] });
const [dryer] = batch.dryers;
const dryerAt = (change: Partial<NonNullable<typeof dryer>>) => ({ dryers: [{ ...dryer!, ...change }] });

test("implausible says what is probably meant where a temperature, a time or a share has a slip", () => {
  // 80 °F, 158 °C, 60 s of drying, 40 min to load, 9.6 %
  expect(told(dyeAt({ celsius: (80 - 32) / 1.8 }))).toEqual([
    "dyes.coral.temperature: write 80 °C if °C is meant",
  ]);
  expect(told(dyeAt({ celsius: 30 }))).toEqual(["dyes.coral.temperature: write 86 °C if °C is meant"]);
  expect(told(dyeAt({ celsius: 2 }))).toEqual(["dyes.coral.temperature: check the temperature and its unit"]);
  expect(told(dryerAt({ celsius: 158 }))).toEqual(["dryers.trays.temperature: write 158 °F if °F is meant"]);
  expect(told(dryerAt({ minutes: 1 }))).toEqual(["dryers.trays.time: write 60 min if minutes are meant"]);
  expect(told({ handling: { ...batch.handling, loadSeconds: 2400 } })).toEqual([
    "handling.load: write 40 s if seconds are meant",
  ]);
  expect(told({ yield: 0.096 })).toEqual(["yield: write 96 % if the decimal point is misplaced"]);
  expect(told({ yield: 0.02 })).toEqual(["yield: the yield is the share of good parts: check it"]);
});

test("each bound of implausible temperatures, times and shares is where its message says", () => {
  const count = (change: Partial<Batch>): number => told(change).length;
  expect([39.9, 40].map((celsius) => count(dyeAt({ celsius })))).toEqual([1, 0]);
  expect([130, 130.1].map((celsius) => count(dryerAt({ celsius })))).toEqual([0, 1]);
  expect([4.99, 5].map((minutes) => count(dryerAt({ minutes })))).toEqual([1, 0]);
  for (const key of ["loadSeconds", "drainSeconds", "rinseSeconds", "unloadSeconds"] as const)
    expect([1800, 1801].map((seconds) => count({ handling: { ...batch.handling, [key]: seconds } }))).toEqual(
      [0, 1],
    );
  expect([0.499, 0.5].map((share) => count({ yield: share }))).toEqual([1, 0]);
});

test("implausible says what is probably meant where a price has a slip of unit, whatever the currency", () => {
  const { rates } = batch;
  for (const worth of [1, 150, 17_000]) {
    const scaled = Object.fromEntries(
      Object.entries(rates).map(([key, value]) => [key, value * worth]),
    ) as typeof rates;
    const given = (change: Partial<typeof rates>, price = 46) =>
      told({ rates: { ...scaled, ...change }, ...dyeAt({ price: price * worth }) });
    expect(given({})).toEqual([]);
    expect(given({ labourPerHour: 60 * 34 * worth })).toEqual([
      `rates.labour: write ${34 * worth} /h if it is meant per hour, not per minute`,
    ]);
    expect(given({ labourPerHour: (34 * worth) / 24 })).toEqual([
      `rates.labour: write ${34 * worth} /h if it is meant per hour, not per day`,
    ]);
    expect(given({ electricityPerKwh: 310 * worth })[0]).toMatch(/^rates.electricity: .*kWh, not per Wh$/);
    expect(given({ waterPerM3: 4200 * worth })[0]).toMatch(/^rates.water: .*cubic metre, not per litre$/);
    expect(given({ disposalPerL: 600 * worth })[0]).toMatch(/^rates.disposal: .*litre, not per millilitre$/);
    expect(given({}, 46_000)).toEqual([
      `dyes.coral.price: write ${46 * worth} /L if it is meant per litre, not per millilitre`,
    ]);
  }
  const powder = dyeAt({ dilution: { kind: "powder", gramsPerL: 5 }, price: 90_000 });
  expect(told(powder)).toEqual(["dyes.coral.price: write 90 /kg if it is meant per kilogram, not per gram"]);
  expect(told({ rates: { labourPerHour: 2040 } })).toEqual([]);
  expect(told({ rates: { ...rates, labourPerHour: 0 } })).toEqual([]);
});

test("each bound of implausible prices is where its message says", () => {
  const count = (rates: Batch["rates"], change: Partial<Batch> = {}): number =>
    told({ ...dyeAt({ price: 10 }), rates, ...change }).length;
  const labour = (kWh: number) => count({ labourPerHour: 10, electricityPerKwh: 10 / kWh });
  expect([4.99, 5.01, 999, 1001].map(labour)).toEqual([1, 0, 0, 1]);
  const dyed = (kind: "liquid" | "powder") => (hours: number) =>
    count(
      { labourPerHour: 10 },
      dyeAt({
        price: 10 * hours,
        dilution: kind === "liquid" ? dye.dilution : { kind: "powder", gramsPerL: 5 },
      }),
    );
  expect([0.00499, 0.00501, 99.9, 100.1].map(dyed("liquid"))).toEqual([1, 0, 0, 1]);
  expect([0.00999, 0.01001, 299.9, 300.1].map(dyed("powder"))).toEqual([1, 0, 0, 1]);
  const water = (hours: number) => count({ labourPerHour: 10, waterPerM3: 10 * hours });
  expect([0.00199, 0.00201, 4.99, 5.01].map(water)).toEqual([1, 0, 0, 1]);
  const disposal = (hours: number) => count({ labourPerHour: 10, disposalPerL: 10 * hours });
  expect([0, 1e-9, 1.99, 2.01].map(disposal)).toEqual([0, 0, 0, 1]);
});
