import { expect, test } from "vitest";
import { tellApart } from "../../../../src/core/uptake/fit/compare-laws.js";
import { fitUptake } from "../../../../src/core/uptake/fit/fit-uptake.js";

const told = (
  first: number | undefined,
  second: number | undefined,
  bestLaw: "first-order" | "second-order" = "first-order",
) =>
  tellApart({
    law: "first-order",
    bestLaw,
    aicc: first,
    perLaw: [
      { law: "first-order", aicc: first, limit: undefined },
      { law: "second-order", aicc: second, limit: undefined },
      { law: "parabolic", aicc: -100, limit: "still-rising" },
    ],
  });

test("laws up to 2 apart in AICc are not distinguished, up to 10 partly, beyond that they are", () => {
  expect(told(1, 2.5)).toEqual({ told: "no", nearest: "second-order", aiccApart: 1.5 });
  expect(told(1, 3)).toMatchObject({ told: "no" });
  expect(told(1, 3.5)).toMatchObject({ told: "partly" });
  expect(told(1, 11)).toMatchObject({ told: "partly" });
  expect(told(1, 11.5)).toMatchObject({ told: "yes" });
});

test("a law that was asked for may be worse, and too few points tell nothing", () => {
  expect(told(4, 1, "second-order")).toEqual({ told: "worse", nearest: "second-order", aiccApart: 3 });
  expect(told(1, undefined)).toEqual({ told: "unknown" });
});

test("a fit with a law asked for holds that law's constants and names the best beside it", () => {
  const points = [10, 20, 40, 80, 160, 320].map((seconds) => ({
    seconds,
    uptake: 3 * (1 - Math.exp(-seconds / 60)),
  }));
  const [best, asked] = [fitUptake(points), fitUptake(points, "second-order")];
  if (!best.ok || !asked.ok) throw new Error("no fit");
  expect(asked.value).toMatchObject({ ...best.value.perLaw[1], bestLaw: "first-order", points: 6 });
});
