import { expect, test } from "vitest";
import type { LawName } from "../../../../src/core/model/batch.js";
import { chooseCurve, firstOfBest, plausibleLaws } from "../../../../src/core/uptake/swatches/choose-law.js";
import { swatchSet } from "../../../../src/core/uptake/swatches/swatch-curves.js";
import { asRead, inventedDye, seeded } from "../shade/invented-dyes.js";

const tried = (law: LawName, mean: number) => ({ law, mean, median: mean, max: mean });

test("the earlier law wins up to 0.1 CIEDE2000 above the best mean error, and loses beyond", () => {
  const best = tried("cegarra-puente", 0.5);
  const laws = (first: number) =>
    firstOfBest([tried("first-order", first), tried("parabolic", 0.9), best]).law;
  expect(laws(0.599)).toBe("first-order");
  expect(laws(0.601)).toBe("cegarra-puente");
});

test("laws that are beaten early are left out: the chosen curve and the plausible laws stay the same", () => {
  const random = seeded(11);
  let leftOut = 0;
  let doubted = 0;
  for (let i = 0; i < 12; i++) {
    const set = swatchSet(asRead(inventedDye(random), 0.3, random));
    if (!set.ok) throw new Error(set.faults[0]!.message);
    const all = chooseCurve(set.value, "auto", undefined, true);
    const some = chooseCurve(set.value, "auto");
    expect(all.tried).toHaveLength(4);
    expect(all.tried).toEqual(expect.arrayContaining([...some.tried]));
    expect(plausibleLaws(some.tried)).toEqual(plausibleLaws(all.tried));
    expect(some.curve.law).toBe(all.curve.law);
    expect(some.curve.ratePerSecond).toBe(all.curve.ratePerSecond);
    leftOut += all.tried.length - some.tried.length;
    doubted += plausibleLaws(all.tried).length - 1;
  }
  expect(leftOut).toBeGreaterThan(6);
  expect(doubted).toBeGreaterThan(6);
});
