import { expect, test } from "vitest";
import { bathPoints } from "../../../../src/log/review/points/bath-points.js";
import type { JudgedLoad } from "../../../../src/log/review/points/judged-load.js";
import { localTime } from "../../../../src/log/row/local-time.js";

const noise = [0.2, -0.1, 0.1, -0.2, 0.15, -0.15, 0.1, -0.1];

function load(
  i: number,
  lighter: number,
  more: Partial<JudgedLoad["row"]> = {},
  rest: Partial<JudgedLoad> = {},
) {
  const one: JudgedLoad = {
    row: {
      row: i + 2,
      time: localTime(2026, 1, 1, 8, i, 0)!,
      bath: "six",
      event: "load",
      part: "clip",
      parts: 40,
      shade: "light",
      celsius: 80,
      ...more,
    },
    lab: [
      60 + lighter + noise[i % noise.length]!,
      20 + noise[(i + 3) % noise.length]!,
      10 + noise[(i + 5) % noise.length]!,
    ],
    target: [60, 20, 10],
    strength: 1,
    timeRatio: 1,
    ...rest,
  };
  return one;
}
const steady = (count: number, more: Partial<JudgedLoad["row"]> = {}) =>
  Array.from({ length: count }, (_, i) => load(i, 0, more));
const off = (more: Partial<JudgedLoad["row"]> = {}, rest: Partial<JudgedLoad> = {}) =>
  Array.from({ length: 4 }, (_, i) => load(20 + i, 2, more, rest));

test("steady loads are in control, and points are signed", () => {
  const { points, runs } = bathPoints(steady(20), 80);
  expect(runs).toEqual([]);
  expect(points[0]).toMatchObject({ shade: "light", deltaL: expect.closeTo(0.2, 9), out: false });
  expect(points[0]!.deltaE00).toBeGreaterThan(0);
});

test("a drift that nobody sees is charted and not called one", () => {
  // Readings that are very alike: three sigma are a few hundredths.
  const alike = (i: number, lighter: number): JudgedLoad => {
    const one = load(i, 0);
    const [, a, b] = one.target;
    return { ...one, lab: [60 + lighter + (i % 2 === 0 ? 0.01 : -0.01), a, b] };
  };
  const drifted = (by: number) =>
    bathPoints(
      [...Array.from({ length: 20 }, (_, i) => alike(i, 0)), ...[20, 21, 22].map((i) => alike(i, by))],
      80,
    );
  expect(
    drifted(0.28)
      .points.slice(20)
      .every(({ out }) => out),
  ).toBe(true);
  expect(drifted(0.28).runs).toEqual([]);
  expect(drifted(0.32).runs).toHaveLength(1);
});

test("with fewer than two readings there are no limits", () => {
  expect(bathPoints(steady(1), 80).points[0]).toMatchObject({
    individualsLimits: null,
    ewma: null,
    out: false,
  });
});

test.each([
  ["temperature", off({ celsius: 77 }), "the bath was 3 °C cooler than before"],
  ["new lot", off({ powderLot: "B" }), "powder lot B begins there"],
  ["time", off({}, { timeRatio: 0.9 }), "dips were 10 % shorter than before"],
  ["strength", off({}, { strength: 0.8 }), "the bath was 20 % weaker than before"],
  ["not known", off(), "nothing that was logged explains it"],
] as const)("a run of lighter loads has its likely cause: %s", (cause, loads, said) => {
  const { runs } = bathPoints(
    [
      ...steady(20, { powderLot: "A" }),
      ...loads.map((one) => (cause === "new lot" ? one : { ...one, row: { ...one.row, powderLot: "A" } })),
    ],
    80,
  );
  expect(runs).toHaveLength(1);
  expect(runs[0]).toMatchObject({ sides: ["lighter"], cause, said: expect.stringContaining(said) });
});

test("a cause that makes loads darker does not explain lighter ones, and a lot that begins with a cause is said beside it", () => {
  const runOf = (loads: readonly JudgedLoad[]) =>
    bathPoints([...steady(20, { powderLot: "A" }), ...loads], 80).runs[0];
  expect(runOf(off({ celsius: 83, powderLot: "A" }))).toMatchObject({ cause: "not known" });
  expect(runOf(off({ powderLot: "B" }, { timeRatio: 0.8 }))).toMatchObject({
    cause: "time",
    said: "dips were 20 % shorter than before, compared with what the bath needed; powder lot B begins there too",
  });
  // Each threshold from both sides.
  expect(runOf(off({ celsius: 79.05, powderLot: "A" }))).toMatchObject({ cause: "not known" });
  expect(runOf(off({ celsius: 78.95, powderLot: "A" }))).toMatchObject({ cause: "temperature" });
  expect(runOf(off({ powderLot: "A" }, { timeRatio: 0.96 }))).toMatchObject({ cause: "not known" });
  expect(runOf(off({ powderLot: "A" }, { timeRatio: 0.94 }))).toMatchObject({ cause: "time" });
  expect(runOf(off({ powderLot: "A" }, { strength: 0.96 }))).toMatchObject({ cause: "not known" });
  expect(runOf(off({ powderLot: "A" }, { strength: 0.94 }))).toMatchObject({ cause: "strength" });
});

test("of several changes the one that matters most is the cause", () => {
  const cause = (celsius: number, strength: number) =>
    bathPoints([...steady(20), ...off({ celsius }, { strength })], 80).runs[0]!.cause;
  expect([cause(78, 0.92), cause(78, 0.88)]).toEqual(["temperature", "strength"]);
});

test("what was always so is not the cause of a change", () => {
  const cool = (loads: readonly JudgedLoad[]) =>
    loads.map((one) => ({ ...one, row: { ...one.row, celsius: 77 }, timeRatio: 0.8 }));
  expect(bathPoints(cool([...steady(20), ...off()]), 80).runs[0]).toMatchObject({ cause: "not known" });
});

test("chroma, hue and the size of the difference have charts too; what overlaps is one drift", () => {
  const moved = (lab: readonly [number, number, number]) =>
    bathPoints([...steady(20), ...off().map((one) => ({ ...one, lab }))], 80);
  // Along the hue of the shade, across it, and both.
  expect(moved([60.1, 22, 11]).runs).toMatchObject([{ sides: ["more colourful"] }]);
  expect(moved([60.1, 19, 11.9]).runs).toMatchObject([{ sides: ["of another hue"] }]);
  expect(moved([57, 18, 9]).runs).toMatchObject([{ sides: ["darker", "duller"] }]);
  const { charts, points } = moved([57, 18, 9]);
  expect(charts.map(({ of, limits }) => [of, limits[0] === null])).toEqual([
    ["deltaL", false],
    ["deltaC", false],
    ["deltaH", false],
    ["deltaE00", true],
  ]);
  expect(points.slice(20).every(({ out }) => out)).toBe(true);
  expect(points.slice(0, 20).some(({ out }) => out)).toBe(false);
});
