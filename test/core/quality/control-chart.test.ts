import { expect, test } from "vitest";
import { controlChart } from "../../../src/core/quality/control-chart.js";
import { individualsLimits } from "../../../src/core/quality/individuals-limits.js";
import { randomNumbers } from "../../tools/random-numbers.js";

const calm = [0, 1, 0, 1, 0, 1, 0, 1, 0, 1];

test("individualsLimits rests on the first readings only, and on two at least", () => {
  expect(individualsLimits([...calm, 100], 10)).toEqual(individualsLimits(calm));
  expect(individualsLimits([...calm, 100], 11)!.upper).toBeGreaterThan(individualsLimits(calm)!.upper);
  expect(individualsLimits([1])).toBeUndefined();
  expect(individualsLimits(calm, 1)).toBeUndefined();
  expect(controlChart([1])).toBeUndefined();
});

test("a reading is out of control beyond 3 σ and not just within", () => {
  const { upper, lower } = individualsLimits(calm)!;
  const out = (value: number) =>
    controlChart([...calm, value], { readings: 10 })!
      .points.at(-1)!
      .signals.includes("reading");
  expect([upper + 1e-9, upper - 1e-9, lower - 1e-9, lower + 1e-9].map(out)).toEqual([
    true,
    false,
    true,
    false,
  ]);
});

test("a lasting shift is one run, from where the average left the other side of the centre", () => {
  const values = [...calm, ...calm, 1.9, 2.1, 1.9, 2.1, 1.9, 2.1, 0, 1, 0, 1];
  const { runs } = controlChart(values)!;
  expect(runs).toHaveLength(1);
  expect(runs[0]).toMatchObject({ side: "above", since: 19 });
  expect(runs[0]!.first).toBeGreaterThan(19);
  expect(runs[0]!.signals).toContain("average");
});

test("one wild reading is a run of its own that began with itself", () => {
  const { runs } = controlChart([...calm, ...calm, -6, ...calm])!;
  expect(runs[0]).toMatchObject({ first: 20, side: "below" });
  expect(runs[0]!.signals).toContain("reading");
});

test("with an upper limit only, small differences are never out of control", () => {
  const values = [...calm, ...calm, -9, -9, -9, 9];
  const { runs, points } = controlChart(values, { upperOnly: true })!;
  expect(runs.map(({ first, side }) => [first, side])).toEqual([[23, "above"]]);
  for (const { ewmaLimits } of points) expect(ewmaLimits[0]).toBeNull();
});

test("a chart of equal readings calls only another value out of control", () => {
  expect(controlChart([2, 2, 2, 2])!.runs).toEqual([]);
  expect(controlChart([2, 2, 2, 2.01], { readings: 3 })!.runs).toMatchObject([{ first: 3, side: "above" }]);
});

test("of readings that only chance moves, few are out of control; of those after a shift of 1 σ most charts find it", () => {
  const next = randomNumbers(11);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  let [falseAlarms, found] = [0, 0];
  for (let chart = 0; chart < 400; chart++) {
    const steady = Array.from({ length: 40 }, normal);
    const shifted = steady.map((value, i) => (i < 20 ? value : value + 1.5));
    if (controlChart(steady)!.runs.some(({ first }) => first >= 20)) falseAlarms++;
    if (controlChart(shifted)!.runs.some(({ first, side }) => first >= 20 && side === "above")) found++;
  }
  // Limits from 20 readings give more false alarms than one in 370.
  expect(falseAlarms).toBeLessThan(0.35 * 400);
  expect(found).toBeGreaterThan(0.9 * 400);
});
