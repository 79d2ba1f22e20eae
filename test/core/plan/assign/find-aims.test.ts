import { expect, test } from "vitest";
import { done } from "../../../../src/core/fault.js";
import type { Dye } from "../../../../src/core/model/batch.js";
import { findAims } from "../../../../src/core/plan/assign/find-aims.js";
import type { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { FittedDyes } from "../../../../src/core/uptake/shade/fitted-dyes.js";
import { batch, bath, dye, handling, hook, light, order } from "../sample.js";

const read: Dye = {
  ...dye,
  base: { name: "white", lab: [92.1, -0.6, -2.3] },
  swatches: [
    { seconds: 15, colour: { kind: "lab", lab: [80.2, 21.7, 9.8] } },
    { seconds: 60, colour: { kind: "lab", lab: [65.9, 44.6, 23.0] } },
    { seconds: 180, colour: { kind: "lab", lab: [55.2, 55.9, 31.8] } },
  ],
};

test("swatches are doubtful from a median leave-one-out error over 2.5 CIEDE2000 on", () => {
  const fitted = new FittedDyes().fit(read, handling);
  if (!fitted.ok || fitted.value.model.chosen === null) throw new Error("the sample has a curve");
  const { model, aims } = fitted.value;
  const { curve, tried } = fitted.value.model.chosen;
  const asked = {
    ...batch,
    baths: [{ ...bath, dye: read }],
    orders: [order(0, hook, { ...light, dye: read }, 1)],
  };
  const codes = (median: number): string[] => {
    const chosen = { curve, tried: tried.map((one) => ({ ...one, median })) };
    const dyes = {
      dyes: { fit: () => done({ model: { ...model, chosen }, aims }) },
    } as unknown as SharedWork;
    return findAims(asked, dyes).faults.map(({ code }) => code);
  };
  expect(codes(2.49)).toEqual([]);
  expect(codes(2.51)).toEqual(["swatches-doubtful"]);
});
