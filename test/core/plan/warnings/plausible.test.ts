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

test("each bound of what is implausible lies where it is said to", () => {
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

test("planBatch says that a bath runs dry, and when swatches disagree or come from a screen", () => {
  const dry = planBatch({
    ...batch,
    baths: [{ ...bath, topUp: "none" }],
    orders: [order(0, hook, light, 40_000)],
  });
  expect(dry.faults.filter((fault) => fault.severity === "error").map((fault) => fault.code)).toEqual([
    "bath-dry",
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
