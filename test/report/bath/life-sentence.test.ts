import { expect, test } from "vitest";
import { batchWear } from "../../../src/core/plan/wear.js";
import { lifeSentence } from "../../../src/report/bath/life-sentence.js";
import { batch } from "../../core/plan/sample.js";

test("a bath is said to grow stronger where its last load finds it over 110 %", () => {
  const wear = batchWear(batch);
  if (!wear.ok) throw new Error(JSON.stringify(wear.faults));
  const [bath] = wear.value.baths;
  const endsAt = (strength: number): string =>
    lifeSentence({ ...bath!, trace: bath!.trace.map((load) => ({ ...load, strength })) });
  expect(endsAt(1.0999)).toMatch(/at 110 % strength\./);
  expect(endsAt(1.1001)).toContain("at 110 % strength: water evaporates and dye stays");
});
