import { expect, test } from "vitest";
import type { Dye } from "../../../../src/core/model/batch.js";
import { isMeasured } from "../../../../src/core/recipe/mixture/is-measured.js";

type Swatch = Dye["swatches"][number];

const measured = (seconds: number): Swatch => ({
  seconds,
  colour: { kind: "reflectance", curve: { nm: [], values: [] } } as unknown as Swatch["colour"],
});
const read = (seconds: number): Swatch => ({
  seconds,
  colour: { kind: "lab", lab: [50, 30, 10] } as Swatch["colour"],
});

test("a dye is measured where every swatch and the bare part are reflectances", () => {
  expect(isMeasured({ swatches: [measured(0), measured(30), measured(60)] })).toBe(true);
  expect(isMeasured({ swatches: [measured(0), read(30), measured(60)] })).toBe(false);
  // The base of the dye is then a colour only.
  expect(isMeasured({ swatches: [measured(30), measured(60)] })).toBe(false);
});
