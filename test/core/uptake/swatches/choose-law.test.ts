import { expect, test } from "vitest";
import type { LawName } from "../../../../src/core/model/batch.js";
import { firstOfBest } from "../../../../src/core/uptake/swatches/choose-law.js";

const tried = (law: LawName, mean: number) => ({ law, mean, median: mean, max: mean });

test("the earlier law wins up to 0.1 CIEDE2000 above the best mean error, and loses beyond", () => {
  const best = tried("cegarra-puente", 0.5);
  const laws = (first: number) =>
    firstOfBest([tried("first-order", first), tried("parabolic", 0.9), best]).law;
  expect(laws(0.599)).toBe("first-order");
  expect(laws(0.601)).toBe("cegarra-puente");
});
