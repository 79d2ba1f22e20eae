import fc from "fast-check";
import { expect, test } from "vitest";
import { coloured, plain, trueColoured } from "../../../src/report/format/paint.js";
import { widthOf } from "../../../src/report/format/wrap.js";
import { textPlot } from "../../../src/report/plot/text-plot.js";
import { bare, samplePlot } from "./sample.js";

test.each([44, 80])("a plot as text of %i columns is the recorded drawing", async (columns) => {
  const drawn = textPlot(samplePlot, columns, plain).join("\n");
  await expect(`${drawn}\n`).toMatchFileSnapshot(`../golden/plot/sample-${columns}.txt`);
});

test("a plot as text is plain ASCII, and never wider than asked for", () => {
  for (let columns = 30; columns <= 120; columns += 1) {
    const lines = textPlot(samplePlot, columns, plain);
    for (const line of lines) {
      expect(line).toMatch(/^[ -~]*$/);
      expect(widthOf(line)).toBeLessThanOrEqual(columns);
    }
  }
});

test("colour changes nothing but escapes; true colour adds the strip", () => {
  const bareOf = (text: string): string =>
    text.replace(new RegExp(`${String.fromCharCode(27)}\\[[\\d;]*m`, "g"), "");
  const without = textPlot(samplePlot, 80, plain);
  expect(textPlot(samplePlot, 80, coloured).map(bareOf)).toEqual(without);
  const full = textPlot(samplePlot, 80, trueColoured);
  expect(full.length).toBe(without.length + 1);
  const strip = full.find((line) => line.includes("48;2;242;217;176"))!;
  expect(strip).toContain("48;2;138;51;36");
  expect(widthOf(bareOf(strip))).toBe(80);
});

test("a dot is in the row and column of its numbers", () => {
  const lines = textPlot(
    {
      ...bare(
        [
          [0, 0],
          [10, 100],
        ],
        "dots",
      ),
      x: { label: "x", unit: "", from: 0, to: 20 },
    },
    60,
    plain,
  );
  const top = lines.findIndex((line) => line.startsWith("100 +"));
  const bottom = lines.findIndex((line) => line.startsWith("  0 +"));
  expect(lines[bottom]![5]).toBe("o");
  expect(lines[top]!.lastIndexOf("o")).toBe(5 + 27);
});

test("a steep line is joined from row to row", () => {
  const lines = textPlot(
    bare([
      [0, 0],
      [5, 0],
      [5.01, 10],
      [10, 10],
    ]),
    60,
    plain,
  );
  const rows = lines.filter((line) => /^ *\d* [|+](?![-+])/.test(line)).slice(1, -1);
  for (const row of rows) expect(row.slice(5).trim()).toBe(":");
});

test("a plot without points, of one point, of equal and of negative numbers is drawn", () => {
  for (const points of [
    [],
    [[3, 7]],
    [
      [1, 5],
      [2, 5],
    ],
    [
      [-2, -1e-9],
      [-1, -3e-9],
    ],
    [[0, 0]],
  ] as const)
    for (const kind of ["line", "dots"] as const) {
      const lines = textPlot(bare(points, kind), 60, plain);
      expect(lines.join("\n")).not.toMatch(/NaN|Infinity/);
      if (points.length > 0 && kind === "dots") expect(lines.slice(2, -3).join("")).toContain("o");
    }
});

test("a number that is not finite is a defect, not an empty drawing", () => {
  expect(() => textPlot(bare([[0, Number.NaN]]), 60, plain)).toThrow("cannot show NaN");
});

test("any finite points are drawn within the width", () => {
  const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(number, number), { maxLength: 8 }),
      fc.integer({ min: 40, max: 100 }),
      (points, columns) => {
        for (const kind of ["line", "dots"] as const)
          for (const line of textPlot(bare(points, kind), columns, plain))
            expect(widthOf(line)).toBeLessThanOrEqual(columns);
      },
    ),
    { numRuns: 100 },
  );
});
