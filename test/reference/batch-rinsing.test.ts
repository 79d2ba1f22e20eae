import { expect, test } from "vitest";
import { rinseAfterLoad } from "../../src/core/bath/rinse/rinse.js";
import { rinseLoads } from "../../src/core/bath/rinse/rinse-loads.js";

// source: batchRinsing1977, still rinses in series, drag-out 0.005 of their volume: strength of rinses 1 to 3 after so many
// loads, by the paper's closed formula, per strength of the bath
test.each([
  [10, 0.048652059, 0.001321316, 2.6196144e-5],
  [40, 0.18086114, 0.017848431, 0.0012227565],
  [120, 0.45036727, 0.12222832, 0.023460131],
])("after %d loads three still rinses in a row have the paper's strengths", (loads, ...strengths) => {
  const dragOutL = 0.005;
  for (const [k, strength] of strengths.entries()) {
    const work = Array.from({ length: loads }, () => ({ dragOutL, dyePerL: 1, takenUp: 0 }));
    const before = rinseLoads(work, { rinses: k, waterL: 1, every: loads });
    const after = rinseLoads(work, { rinses: k + 1, waterL: 1, every: loads });
    expect(Math.abs((after.dyeToWaste - before.dyeToWaste) / strength - 1)).toBeLessThan(1e-7);
  }
});

// Computed, no source.
test.each([
  [0.01, 0.05],
  [0.004, 0.02],
  [0.02, 0.1],
])(
  "with a drag-out of %d of its volume a still rinse comes to %d of the bath's strength with load 6",
  (dragOut, limit) => {
    let [strength, load] = [0, 0];
    while (strength < limit) {
      strength = rinseAfterLoad(strength, 1, { water: 1, dragOut });
      load++;
    }
    expect(load).toBe(6);
  },
);
