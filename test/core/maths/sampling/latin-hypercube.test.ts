import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { latinHypercube } from "../../../../src/core/maths/sampling/latin-hypercube.js";

/** Correlation of two columns of numbers spread evenly over 0..1. */
const correlation = (xs: readonly number[], ys: readonly number[]): number =>
  (12 * xs.reduce((sum, x, i) => sum + (x - 0.5) * (ys[i]! - 0.5), 0)) / xs.length;

describe("latinHypercube", () => {
  test("hits each part of 0..1 exactly once for every input, and neither end", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 6 }),
        fc.integer(),
        (draws, inputs, seed) => {
          const columns = latinHypercube(draws, inputs, seed);
          expect(columns).toHaveLength(inputs);
          for (const column of columns) {
            const parts = column.map((u) => Math.floor(u * draws)).sort((a, b) => a - b);
            expect(parts).toEqual(Array.from({ length: draws }, (_, i) => i));
            for (const u of column) expect(u > 0 && u < 1).toBe(true);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("gives the same numbers for the same seed and others for another", () => {
    expect(latinHypercube(50, 3, 11)).toEqual(latinHypercube(50, 3, 11));
    expect(latinHypercube(50, 3, 11)).not.toEqual(latinHypercube(50, 3, 12));
  });

  // Frozen: a change of these changes every recorded report.
  test("starts with these numbers for the seed 1", () => {
    expect(latinHypercube(1000, 2, 1).map((column) => column.slice(0, 3))).toEqual([
      [0.3319938201365294, 0.5063219289908885, 0.2733496398749994],
      [0.5280789509768365, 0.5625040778497933, 0.6905488997042412],
    ]);
  });

  test("leaves the draws of the inputs before as they were when one is added", () => {
    expect(latinHypercube(100, 5, 3).slice(0, 4)).toEqual(latinHypercube(100, 4, 3));
  });

  test("keeps inputs apart: no two of ten columns correlate by more than 0.06 in 1000 draws", () => {
    const columns = latinHypercube(1000, 10, 2027);
    let checked = 0;
    for (let i = 0; i < columns.length; i++)
      for (let j = 0; j < i; j++) {
        expect(Math.abs(correlation(columns[i]!, columns[j]!))).toBeLessThan(0.06);
        checked++;
      }
    expect(checked).toBe(45);
  });

  test("gives no column where there is no input", () => {
    expect(latinHypercube(10, 0, 1)).toEqual([]);
  });
});
