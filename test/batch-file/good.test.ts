import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { batchSchema } from "../../src/batch-file/schema/batch.js";
import { coldPerHot } from "../../src/core/bath/water.js";
import { readFile, readGood, readText } from "./read.js";

const root = new URL("../../", import.meta.url).pathname;
const mains = readdirSync(`${root}fixtures/good`).filter(
  (name) => /\.(yaml|json)$/.test(name) && readFile(`fixtures/good/${name}`).includes("batch"),
);

test.each(mains)("%s is read without an error", async (name) => {
  const read = await readGood(name);
  expect(read.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
  expect(read.batch?.name).toBeTruthy();
});

test("readBatch accepts a name alone, and fills in the defaults of handling and room", async () => {
  const { batch, diagnostics } = await readGood("minimal.yaml");
  expect(diagnostics).toEqual([]);
  expect(batch).toMatchObject({
    name: "kites",
    room: { celsius: 20, humidity: 0.5 },
    yield: 1,
    consumables: { perBath: 0, perLoad: 0, perPart: 0 },
    handling: {
      loadSeconds: 15,
      loadPartSeconds: 2,
      drainSeconds: 15,
      rinseSeconds: 30,
      rinses: 1,
      rinseWaterL: 2,
      rinseEvery: 1,
      unloadSeconds: 10,
      unloadPartSeconds: 1,
      belowKelvin: 1,
      coolToCelsius: 45,
      dryerLoadingMinutes: 3,
      setUpMinutes: 15,
      cleanUpMinutes: 15,
      timingSeconds: 2,
      shortestSeconds: 15,
      longestSeconds: 300,
      dragOutMlPerDm2: 0.8,
      dragOutAssumed: true,
      liquorRatioLPerKg: 20,
      freeboard: 0.05,
      assumed: [
        "load",
        "loadPart",
        "drain",
        "rinse",
        "unload",
        "unloadPart",
        "dryerLoading",
        "setUp",
        "cleanUp",
        "liquorRatio",
      ],
    },
  });
  expect(batch!.handling).not.toHaveProperty("topUpCelsius");
  expect(batch).not.toHaveProperty("currency");
  expect(batch).not.toHaveProperty("pricing");
});

test("readBatch fills in the defaults of tanks, dyes, parts, shades and baths, and marks what is assumed", async () => {
  const { batch, spec, diagnostics } = await readGood("small.yaml");
  expect(diagnostics).toEqual([]);
  const tank = batch!.tanks[0]!;
  expect(tank.capacityL).toBe(6.9);
  expect(tank.surfaceAssumed).toBe(true);
  // A cube of 6 L: 18.171 cm wide, so 330.19 cm2 of surface and five such sides under the liquor.
  expect(tank.surfaceCm2).toBeCloseTo(330.1927, 4);
  expect(tank.wallAreaDm2).toBeCloseTo(5 * 3.301927, 5);
  expect(tank).toMatchObject({ insulation: "none", cover: "none", heaterEfficiency: 0.9, agitationW: 0 });
  expect(batch!.dyes[0]).toMatchObject({
    reading: { illuminant: "D65", observer: 10 },
    activationEnergyJPerMol: 75000,
    uptakePerDm2: 0.03,
    uptakeAssumed: true,
    swatches: [],
  });
  expect(spec!.dyes.lagoon!.uptake).toEqual({ value: 0.03, factor: 4, assumed: true });
  expect(spec!.handling.dragOut).toEqual({ value: 0.8, factor: 3, assumed: true });
  expect(batch!.parts[0]!.volumeCm3).toBeCloseTo(6, 12);
  expect(batch!.shades[0]!.tolerance).toBe(1.5);
  expect(batch!.baths[0]).toMatchObject({ start: { kind: "fresh" }, topUp: "none", after: "keep", index: 0 });
});

test("readBatch takes the uptake of a powder from 0.3 mL of fresh liquor where none is given", async () => {
  const { batch } = await readText("batch: x\ndyes:\n  rust: { dilution: 18 g/L, temperature: 80 °C }\n");
  expect(batch!.dyes[0]!.uptakePerDm2).toBeCloseTo(0.0054, 12);
  expect(batch!.dyes[0]!.uptakeAssumed).toBe(true);
});

test("readBatch reads every key that the schema has, and follows names to what they name", async () => {
  const { batch, diagnostics } = await readGood("everything.yaml");
  expect(diagnostics).toEqual([]);
  const text = ["everything", "everything-workshop", "everything-dyes"]
    .map((name) => readFile(`fixtures/good/${name}.yaml`))
    .join("\n");
  for (const key of Object.keys(batchSchema().shape)) expect(text).toMatch(new RegExp(`^${key}:`, "m"));
  expect(batch).toMatchObject({ date: "2028-02-29", currency: "EUR", startAtMinute: 450, yield: 0.96 });
  expect(batch!.orders[0]!.shade!.dye).toBe(batch!.dyes[0]);
  expect(batch!.orders[0]!.base).toBe(batch!.bases[0]);
  expect(batch!.baths[1]!.tank).toBe(batch!.tanks[1]);
  expect(batch!.orders[1]).not.toHaveProperty("base");
  expect(batch!.parts[0]!.blank).toEqual(
    new Map([
      ["chalk", 1.72],
      ["slate", 1.55],
    ]),
  );
  expect(batch!.baths[0]!.start).toEqual({
    kind: "kept",
    volumeL: 5.6,
    strength: 0.92,
    ageDays: 12,
    areaDm2: 310,
  });
  expect(batch!.baths[2]!.start).toEqual({
    kind: "kept",
    volumeL: 5.4 / coldPerHot(85, 19),
    strength: 1,
    ageDays: 3,
    areaDm2: 0,
  });
  const seaweed = batch!.dyes.find(({ name }) => name === "seaweed")!;
  const [lagoon, reef] = seaweed.mix!.parts;
  expect([lagoon!.dye, reef!.dye]).toEqual([batch!.dyes[0], batch!.dyes[2]]);
  // 40 mL/L of a dye that was measured at 1:8, 50 mL/L of one at 1:11.
  expect([lagoon!.strength, reef!.strength]).toEqual([0.04 / (1 / 9), 0.05 / (1 / 12)]);
  expect(seaweed).toMatchObject({
    celsius: 79,
    shelfLifeDays: 30,
    dilution: { kind: "liquid", fraction: 0.09 },
  });
  expect(seaweed.mix!.trials).toEqual([
    {
      seconds: 60,
      strengths: [0.04 / (1 / 9), 0.05 / (1 / 12)],
      colour: { kind: "lab", lab: [66.0, -14.1, 20.2] },
    },
    { seconds: 45, strengths: [0.03 / (1 / 9), 0.055 / (1 / 12)], colour: { kind: "hex", hex: "#a3b87f" } },
  ]);
  expect(batch!.baths[3]!.start).toMatchObject({ strengthEach: [0.92, 0.965] });
  expect(batch!.baths[3]!.start).toHaveProperty("strength", (0.04 * 0.92 + 0.05 * 0.965) / 0.09);
  expect(batch!.tanks.map(({ leastL }) => leastL)).toEqual([4.5, undefined]);
  expect(batch!.parts[0]).toMatchObject({ dragOutMlPerDm2: 1.4, heatCapacityKjPerKgK: 1.9 });
  expect(batch!.parts[1]).toMatchObject({ heatCapacityKjPerKgK: 1.7 });
  expect(batch!.parts[1]).not.toHaveProperty("dragOutMlPerDm2");
  expect(batch!.handling).toMatchObject({
    loadPartSeconds: 1.5,
    rinses: 2,
    rinseEvery: 3,
    unloadPartSeconds: 0.5,
    belowKelvin: 1.5,
    topUpCelsius: 55,
    coolToCelsius: 40,
    assumed: [],
  });
  expect(batch!.pricing).toEqual({ overhead: 0.12, fees: 0.05, margin: 0.4, tax: 0.19, ending: 0.95 });
  expect(batch!.rates.waterPerM3).toBe(3.9);
});

test("a handling figure is listed as assumed unless the file gives it, even with the value of the default", async () => {
  const { batch } = await readText("batch: x\nhandling: { load: 15 s, drain: 12 s, liquorRatio: 20 L/kg }\n");
  expect(batch!.handling.assumed).toEqual([
    "loadPart",
    "rinse",
    "unload",
    "unloadPart",
    "dryerLoading",
    "setUp",
    "cleanUp",
  ]);
});

test("a step of 2 °F under a bath's temperature is 1.11 K, and parts may have no heat capacity", async () => {
  const { batch } = await readText(
    "batch: x\nparts: { cleat: { mass: 6.4 g, area: 41 cm2, heatCapacity: 0 kJ/(kg K) } }\nhandling: { below: 2 °F }\n",
  );
  expect(batch!.handling.belowKelvin).toBeCloseTo(10 / 9, 12);
  expect(batch!.parts[0]!.heatCapacityKjPerKgK).toBe(0);
});

test("readBatch gives an order without a base that of its dye's swatches", async () => {
  const { batch } = await readGood("everything.yaml", { overrides: ["orders.1.shade=lagoon-pale"] });
  expect(batch!.orders[1]!.base?.name).toBe("chalk");
});

test("a JSON batch, and one with carriage returns and a byte order mark, give what the YAML batch gives", async () => {
  const { batch } = await readGood("small.yaml");
  expect((await readGood("small.json")).batch).toEqual(batch);
  const windows = await readGood("small-crlf-bom.yaml");
  expect(windows.batch).toEqual(batch);
  expect(windows.locate(["tanks", "bench", "surface"])).toMatchObject({
    line: 4,
    text: "  bench: { volume: 6 L, heater: 400 W }",
  });
});

test("US measures are read as US measures and named so", async () => {
  const { batch, spec } = await readGood("us-units.yaml");
  expect(batch!.tanks[0]!.volumeL).toBeCloseTo(2 * 3.785411784, 12);
  expect(batch!.tanks[0]!.surfaceCm2).toBeCloseTo(30.48 * 20.32, 9);
  expect(spec!.tanks.crock!.volume.customary).toBe("2 US gal");
  expect(spec!.tanks.crock!.capacity!.customary).toBe("2.4 US gal");
  expect(batch!.room.celsius).toBeCloseTo(20, 12);
  expect(batch!.dyes[0]!.dilution).toEqual({ kind: "liquid", fraction: expect.closeTo(0.1, 12) });
  expect(batch!.dyes[0]!.price).toBeCloseTo(120 / 3.785411784, 12);
  expect(batch!.dyes[0]!.stock).toBeCloseTo(1892.705892, 9);
  expect(batch!.dyes[1]!.price).toBeCloseTo(40 / 0.45359237, 9);
  expect(batch!.dyes[1]!.stock).toBeCloseTo(20 * 28.349523125, 9);
  expect(batch!.parts[0]!.massG).toBeCloseTo(7.08738078125, 12);
  expect(batch!.rates.waterPerM3).toBeCloseTo((0.012 * 1000) / 3.785411784, 9);
});

test("± is kept with every quantity that carries it", async () => {
  const { spec } = await readGood("plus-minus.yaml");
  expect(spec!.rates.electricity!.plusMinus).toBeCloseTo(0.03, 12);
  expect(spec!.rates.water!.plusMinus).toBeCloseTo(0.5, 12);
  expect(spec!.rates.labour).toEqual({ value: 32, plusMinus: 3 });
  expect(spec!.room.temperature).toEqual({ value: 20, plusMinus: 2 });
  expect(spec!.room.humidity.plusMinus).toBeCloseTo(0.1, 12);
  expect(spec!.tanks.bench!.surface).toEqual({ shape: "area", value: 450, plusMinus: 22.5 });
  expect(spec!.tanks.bench!.equipment!.price).toEqual({ value: 140, plusMinus: 20 });
  expect(spec!.dyes.lagoon!.dilution).toEqual({
    kind: "liquid",
    value: 0.1,
    plusMinus: expect.closeTo(0.005, 12),
  });
  expect(spec!.dyes.rust!.dilution).toEqual({ kind: "powder", value: 18, plusMinus: 1 });
  expect(spec!.handling.load).toEqual({ value: 40, plusMinus: 10 });
  expect(spec!.handling.cleanUp).toEqual({ value: 15, plusMinus: 5 });
  expect(spec!.yield.plusMinus).toBeCloseTo(0.01, 12);
});

test("included files are read once each, and their lists come in include order before the file's own", async () => {
  const { batch, diagnostics } = await readGood("diamond.yaml");
  expect(diagnostics).toEqual([]);
  expect(batch!.orders.map((order) => order.quantity)).toEqual([1, 2, 3]);
  expect(batch!.baths).toHaveLength(1);
});

test("an alias has the value of its anchor", async () => {
  const { batch } = await readGood("anchors.yaml");
  expect(batch!.tanks[1]!.volumeL).toBe(6);
  expect(batch!.dryers[0]!.equipment).toEqual({ price: 140, lifeHours: 1500 });
});

test("reflectance files are read beside the file that names them, with comma or semicolon, as share or percent", async () => {
  const { batch, diagnostics } = await readGood("reflectance.yaml");
  expect(diagnostics).toEqual([]);
  const [first, second] = batch!.dyes[0]!.swatches.map((swatch) => swatch.colour);
  expect(first).toMatchObject({ kind: "reflectance", wavelengthsNm: expect.arrayContaining([400, 700]) });
  if (first?.kind !== "reflectance" || second?.kind !== "reflectance") throw new Error("no curves");
  expect(first.reflectance[0]).toBe(0.1707);
  expect(second.wavelengthsNm).toEqual(first.wavelengthsNm);
  second.reflectance.forEach((value, i) => {
    expect(value).toBeCloseTo(0.8 * first.reflectance[i]!, 4);
  });
});

test("readBatch carries the hex of a base over to the reading of each dye", async () => {
  const { batch, diagnostics } = await readText(`batch: x
bases: { white: { hex: "#e8e6e9" }, grey: { lab: [38, 0, -1] } }
dyes:
  rust: { dilution: 1:9, temperature: 80 °C, base: white }
  moss: { dilution: 1:9, temperature: 80 °C, base: white, reading: D65/2 }
  lagoon: { dilution: 1:9, temperature: 80 °C, base: grey, reading: A/10 }
`);
  expect(diagnostics).toEqual([]);
  const [rust, moss, lagoon] = batch!.dyes;
  const close = (lab: readonly number[] | undefined, wanted: readonly number[]): void => {
    for (const [i, value] of wanted.entries()) expect(lab?.[i]).toBeCloseTo(value, 2);
  };
  // Worked out apart from this code from the sRGB and CIELAB formulas: #e8e6e9 under D65 and the 2° observer.
  close(moss!.base?.lab, [91.52, 1.206, -1.218]);
  // The same near-white under the 10° observer is close to it, and not the same.
  expect(Math.hypot(...rust!.base!.lab!.map((v, i) => v - moss!.base!.lab![i]!))).toBeLessThan(0.5);
  expect(rust!.base!.lab).not.toEqual(moss!.base!.lab);
  expect(batch!.bases[0]!.lab).toEqual(rust!.base!.lab);
  expect(lagoon!.base!.lab).toEqual([38, 0, -1]);
});
