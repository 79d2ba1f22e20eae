import { median, quantile } from "d3-array";
import { expect, test } from "vitest";
import { isDyed } from "../../../src/core/model/undyed.js";
import { SharedWork } from "../../../src/core/plan/run/shared-work.js";
import { BathBook } from "../../../src/core/week/day/bath-book.js";
import { joinBatches } from "../../../src/core/week/join/join-batches.js";
import { planWeek } from "../../../src/core/week/week.js";
import type { DyedWeekOrder, WeekOrder } from "../../../src/core/week/week-model.js";
import { everyWeek } from "./tools/every-week.js";
import { smallWeek } from "./tools/small-weeks.js";

const dyedOrder = (one: WeekOrder): one is DyedWeekOrder => isDyed(one.order);

/** A random week by the rules, and the best of every way to work it; undefined where an order is longer than a day. */
function compared(seed: number, people: 1 | 2 = 1) {
  const { batch, wish: alone } = smallWeek(seed);
  const wish = { ...alone, people };
  const shared = new SharedWork();
  const joined = joinBatches([batch], shared);
  const planned = planWeek([batch], wish, shared);
  if (!joined.ok || !planned.ok) throw new Error(JSON.stringify([joined.faults, planned.faults]));
  const { orders, length, days } = planned.value;
  if (orders.some((order) => order.days.length > 1)) return undefined;
  const { shop } = joined.value;
  const best = everyWeek(
    { shop, batches: [batch], people: wish.people, shared },
    joined.value.orders.filter(dyedOrder),
    wish,
    BathBook.of(shop.baths, wish.from, joined.value.agedOn),
    days.length + 1,
  );
  return {
    best,
    lateDays: orders.reduce((sum, order) => sum + order.lateDays, 0),
    minutes: length.minutes,
    leastMinutes: length.leastMinutes,
    days: days.length,
  };
}

test("200 random small weeks are late on as few days as the best of every way to work them, and end at most 1.18 times as late", () => {
  const weeks: NonNullable<ReturnType<typeof compared>>[] = [];
  for (let seed = 1; weeks.length < 200; seed++) {
    const week = compared(seed);
    if (week !== undefined) weeks.push(week);
  }
  expect(weeks.filter(({ lateDays, best }) => lateDays !== best.lateDays)).toEqual([]);
  expect(weeks.filter(({ best }) => best.lateDays > 0).length).toBeGreaterThan(10);
  expect(weeks.filter(({ days }) => days > 1).length).toBeGreaterThan(100);
  const ratios = weeks.map(({ minutes, best }) => minutes / best.minutes);
  expect(median(ratios)).toBeCloseTo(1, 9);
  expect(quantile(ratios, 0.95)).toBeLessThan(1.1);
  expect(Math.max(...ratios)).toBeLessThan(1.18);

  // The bound is never above the best, and near enough to say something.
  const bounds = weeks.map(({ leastMinutes, best }) => best.minutes / leastMinutes);
  expect(Math.min(...bounds)).toBeGreaterThanOrEqual(1 - 1e-9);
  expect(median(bounds)).toBeLessThan(1.15);
});

test("30 random small weeks of two people are late on as few days as the best of every way, and none ends before the bound", () => {
  const weeks: NonNullable<ReturnType<typeof compared>>[] = [];
  for (let seed = 301; weeks.length < 30; seed++) {
    const week = compared(seed, 2);
    if (week !== undefined) weeks.push(week);
  }
  expect(weeks.filter(({ lateDays, best }) => lateDays !== best.lateDays)).toEqual([]);
  const ratios = weeks.map(({ minutes, best }) => minutes / best.minutes);
  expect(median(ratios)).toBeCloseTo(1, 9);
  expect(Math.max(...ratios)).toBeLessThan(1.07);
  for (const { best, leastMinutes } of weeks)
    expect(best.minutes).toBeGreaterThanOrEqual(leastMinutes * (1 - 1e-9));
});
