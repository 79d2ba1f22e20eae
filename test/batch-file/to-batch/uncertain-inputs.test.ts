import { expect, test } from "vitest";
import { uncertainInputs } from "../../../src/batch-file/to-batch/uncertain-inputs.js";
import { readText } from "../read.js";

const batch = `batch: x
tanks: { six: { volume: 6 L } }
dyes: { coral: { dilution: 1:9, temperature: 80 °C, strengthExponent: 1.4 } }
parts: { hook: { mass: 6 g, area: 40 cm2 } }
shades: { pale: { dye: coral, time: 30 s } }
baths: [{ tank: six, dye: coral }]
orders: [{ part: hook, shade: pale, quantity: 10 }]
`;
const inputsOf = async (more = "") => {
  const { spec } = await readText(batch + more);
  return uncertainInputs(spec!).map(({ path, ...input }) => ({ key: path.join("."), ...input }));
};

test("every assumed figure is drawn over its range by ratio, and the drain is not drawn", async () => {
  expect(await inputsOf()).toEqual([
    { key: "dyes.coral.activationEnergy", value: 75_000, factor: Math.sqrt(117 / 45), assumed: true },
    { key: "dyes.coral.uptake", value: 0.03, factor: 4, assumed: true },
    { key: "handling.load", value: 15, factor: 2, assumed: true },
    { key: "handling.loadPart", value: 2, factor: 2, assumed: true },
    { key: "handling.rinse", value: 30, factor: 2, assumed: true },
    { key: "handling.unload", value: 10, factor: 2, assumed: true },
    { key: "handling.unloadPart", value: 1, factor: 2, assumed: true },
    { key: "handling.dryerLoading", value: 3, factor: 2, assumed: true },
    { key: "handling.setUp", value: 15, factor: 2, assumed: true },
    { key: "handling.cleanUp", value: 15, factor: 2, assumed: true },
    { key: "handling.dragOut", value: 0.8, factor: 3, assumed: true },
    { key: "handling.liquorRatio", value: 20, factor: 2, assumed: true },
  ]);
});

test("a dye that no bath holds is not drawn, whatever the others are called", async () => {
  const keysOf = async (name: string) => {
    const dyes = `dyes: { ${name}: { dilution: 1:9, temperature: 80 °C, price: 4 /L ± 1 /L }, spare: { dilution: 1:9, temperature: 80 °C, price: 4 /L ± 1 /L } }`;
    const text = batch.replace(/dyes: .*/, dyes).replaceAll("coral", name);
    const { spec } = await readText(`currency: EUR\n${text}`);
    return uncertainInputs(spec!).map(({ path }) => path.join("."));
  };
  for (const name of ["coral", "constructor"]) {
    const keys = await keysOf(name);
    expect(keys).toContain(`dyes.${name}.price`);
    expect(keys.filter((key) => key.includes("spare"))).toEqual([]);
  }
});

test("a figure that the file gives is drawn only with its ±, as a normal one", async () => {
  const given = await inputsOf(
    "handling: { load: 15 s, loadPart: 2 s ± 1 s, drain: 15 s ± 2 s, dragOut: 0.8 mL/dm2 ± 40 %, liquorRatio: 20 L/kg }\n",
  );
  expect(given.filter(({ key }) => /load|drain|dragOut|liquorRatio/.test(key))).toEqual([
    { key: "handling.loadPart", value: 2, halfWidth: 1, assumed: false },
    { key: "handling.drain", value: 15, halfWidth: 2, assumed: false },
    { key: "handling.unload", value: 10, factor: 2, assumed: true },
    { key: "handling.unloadPart", value: 1, factor: 2, assumed: true },
    { key: "handling.dragOut", value: 0.8, halfWidth: expect.closeTo(0.32, 12), assumed: false },
  ]);
});

test("a figure from evidence is drawn over the interval that the evidence leaves", async () => {
  const [weighed] = (
    await inputsOf("handling: { dragOut: { evidence: [{ part: hook, dry: 60 g, wet: 63 g, count: 10 }] } }\n")
  ).filter(({ key }) => key === "handling.dragOut");
  // Logarithms: ± 20 % of the weighing, sqrt(ln 1.04), and a third to three times of the assumed figure, ln 3 / 1.96.
  const factor = Math.exp(1.959963984540054 / Math.hypot(1 / 0.1980422, 1 / 0.5605215));
  expect(weighed).toMatchObject({ factor: expect.closeTo(factor, 4), assumed: true });
});
