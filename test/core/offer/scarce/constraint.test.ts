import { expect, test } from "vitest";
import type { Batch } from "../../../../src/core/model/batch.js";
import { priceList } from "../../../../src/core/offer/list/price-list.js";
import type { Constraint, OfferWish } from "../../../../src/core/offer/offer-model.js";
import { constraintOf } from "../../../../src/core/offer/scarce/constraint.js";
import { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { shop, wish } from "../sample.js";

function constraint(batch: Batch, more: Partial<OfferWish> = {}): Constraint {
  const asked = { ...wish, ...more };
  const { items } = priceList(batch, batch.shades, asked, new SharedWork());
  return constraintOf(batch, items, asked)!;
}

test("the resource that is used most is named, by the hours of a month's sales", () => {
  const { resource, hours, uses, used, hoursThere } = constraint(shop, { salesPerYear: 1200 });
  expect(uses.map((use) => use.resource)).toEqual(["hands", "tank", "dryer"]);
  expect(hours).toBe(Math.max(...uses.map((use) => use.hours)));
  expect(uses.find((use) => use.hours === hours)!.resource).toBe(resource);
  expect(hoursThere).toBeCloseTo((40 * 365) / 7 / 12, 9);
  expect(used).toBeCloseTo(hours / hoursThere, 12);
  const twice = constraint(shop, { salesPerYear: 2400 });
  // Kept baths cost less, and hands work the same.
  expect(twice.hours).toBeCloseTo(2 * hours, 9);
});

test("a slower dryer or slower hands become what holds the shop back", () => {
  const slow = (batch: Partial<Batch>): string => constraint({ ...shop, ...batch }).resource;
  expect(slow({ dryers: [{ ...shop.dryers[0]!, minutes: 600 }] })).toBe("dryer");
  expect(slow({ dryers: [], handling: { ...shop.handling, setUpMinutes: 200, coolToCelsius: 79 } })).toBe(
    "tank",
  );
  const second = { ...shop.dyes[0]!, name: "moss" };
  const twoTanks: Batch = {
    ...shop,
    dryers: [],
    handling: { ...shop.handling, loadPartSeconds: 600 },
    dyes: [...shop.dyes, second],
    shades: [
      ...shop.shades,
      ...shop.shades.map((one) => ({ ...one, name: `moss-${one.name}`, dye: second })),
    ],
    baths: [
      ...shop.baths,
      { ...shop.baths[0]!, index: 1, dye: second, tank: { ...shop.tanks[0]!, name: "other" } },
    ],
  };
  const { resource, uses } = constraint(twoTanks);
  expect([resource, uses.map(({ name }) => name)]).toEqual(["hands", ["hands", "six", "other"]]);
});

test("one more hour brings nothing while hours are left over, and else what the best that is not made would earn", () => {
  expect(constraint(shop, { salesPerYear: 12 }).nextHour).toBe(0);
  const { resource, nextHour, used, ranked } = constraint(shop, { salesPerYear: 12_000, hoursPerWeek: 10 });
  expect(used).toBeGreaterThan(1);
  const earned = ranked.map((row) => (resource === "hands" ? row.profitPerHour : row.profitPerTankHour));
  expect(earned.some((each) => Math.abs(each - nextHour) < 1e-9)).toBe(resource !== "dryer");
  const endless = constraint(shop);
  expect(endless.used).toBeNull();
  expect(endless.nextHour).toBeGreaterThan(0);
});

test("rows are ranked by what an hour of the constrained resource earns", () => {
  const { ranked, resource } = constraint({ ...shop, dryers: [] });
  expect(resource).toBe("tank");
  const earned = ranked.map(({ profitPerTankHour }) => profitPerTankHour);
  expect(earned).toEqual(earned.toSorted((a, b) => b - a));
  expect(ranked).toHaveLength(2 * 2 * 2);
});
