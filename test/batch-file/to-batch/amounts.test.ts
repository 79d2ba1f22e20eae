import { expect, test } from "vitest";
import { amountsOf, withAmounts } from "../../../src/batch-file/to-batch/amounts.js";
import { toBatch } from "../../../src/batch-file/to-batch/to-batch.js";
import { readGood } from "../read.js";

test("amountsOf finds every quantity that carries ±, and every one with an assumed range", async () => {
  const { spec } = await readGood("plus-minus.yaml");
  const spread = amountsOf(spec!).filter(
    ({ amount }) => amount.plusMinus !== undefined || amount.factor !== undefined,
  );
  const paths = spread.map(({ path }) => path.join("."));
  expect(paths).toEqual(
    expect.arrayContaining([
      "rates.labour",
      "tanks.bench.surface",
      "dyes.lagoon.dilution",
      "dyes.rust.dilution",
      "parts.cleat.blank.chalk",
      "handling.dragOut",
      "yield",
    ]),
  );
  expect(paths).toHaveLength(37);
  expect(spread.filter(({ amount }) => amount.assumed).map(({ path }) => path.join("."))).toEqual([
    "dyes.lagoon.activationEnergy",
    "dyes.rust.activationEnergy",
    "dyes.rust.uptake",
    "handling.loadPart",
    "handling.rinse",
    "handling.unload",
    "handling.unloadPart",
    "handling.dryerLoading",
    "handling.setUp",
    "handling.liquorRatio",
  ]);
});

test("withAmounts gives a spec with other values and leaves the first as it was", async () => {
  const { spec, batch } = await readGood("plus-minus.yaml");
  const drawn = withAmounts(spec!, [
    { path: ["tanks", "bench", "volume"], value: 5.5 },
    { path: ["tanks", "bench", "heater"], value: 390 },
    { path: ["parts", "cleat", "mass"], value: 6.045 },
    { path: ["dyes", "lagoon", "dilution"], value: 0.11 },
  ]);
  const other = toBatch(drawn);
  expect(other.tanks[0]).toMatchObject({ volumeL: 5.5, heaterW: 390 });
  expect(other.parts[0]).toMatchObject({ massG: 6.045, volumeCm3: expect.closeTo(6.5, 12) });
  expect(other.baths[0]!.dye.dilution).toEqual({ kind: "liquid", fraction: 0.11 });
  expect(toBatch(spec!)).toEqual(batch);
});
