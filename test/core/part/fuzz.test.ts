import fc from "fast-check";
import { expect, test } from "vitest";
import { measureMesh } from "../../../src/core/part/measure.js";
import { allForms } from "./tools/files.js";
import { octahedron, sphere, together } from "./tools/solids.js";

const solid = together(sphere(6, 5), octahedron(9));

for (const [form, write] of Object.entries(allForms))
  test(`measureMesh returns a measure or an error that names a place for any damage to a file in the form ${form}`, async () => {
    const good = write(solid);
    const damage = fc.record({
      length: fc.integer({ min: 0, max: good.length }),
      bytes: fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { maxLength: 6 }),
      cut: fc.boolean(),
    });
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(damage, async ({ length, bytes, cut }) => {
        const file = good.slice(0, cut ? length : good.length);
        for (const [at, value] of bytes) if (at < file.length) file[at] = value;
        const outcome = await measureMesh(file);
        if (outcome.ok) {
          expect(Number.isFinite(outcome.value.areaCm2 + outcome.value.volumeCm3)).toBe(true);
          expect(outcome.value.triangles).toBeGreaterThan(0);
        } else {
          refused++;
          expect(outcome.faults).toHaveLength(1);
          expect(outcome.faults[0]!.message).toMatch(/^(byte|line) \d+|no triangles|too large/);
        }
      }),
      { numRuns: 1500, seed: 11 },
    );
    expect(refused).toBeGreaterThan(300);
  });
