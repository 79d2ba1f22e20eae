import { expect, test } from "vitest";
import { type BathOnTheDay, timeline } from "../../../../src/core/plan/day/timeline.js";
import { batch, handling } from "../sample.js";

/** A bath whose loads take four minutes, and which needs so many minutes after each until it is warm again. */
function slowBath(
  tank: string,
  bath: number,
  loads: number,
  { recovers = 0, heats = 60, cools = 30 }: { recovers?: number; heats?: number; cools?: number } = {},
): BathOnTheDay {
  let done = 0;
  let wait = 0;
  return {
    tank,
    bath,
    heatingMinutes: heats,
    nextWaitMinutes: () => (done === loads ? undefined : wait),
    pass: (minutes) => {
      wait = Math.max(0, wait - minutes);
    },
    work: () => {
      const waitMinutes = wait;
      done++;
      wait = recovers;
      return { load: done, parts: 10, waitMinutes, minutes: 4 };
    },
    cool: () => cools,
  };
}

const day = (baths: readonly BathOnTheDay[], dryers = batch.dryers) => timeline(baths, { handling, dryers });
const at = (baths: readonly BathOnTheDay[]): string[] =>
  day(baths, [])
    .entries.filter(({ what, load }) => what === "dip" || (what === "wait" && load !== undefined))
    .map(({ what, tank, load, startMinute }) => `${startMinute} ${what} ${tank} ${load}`);

test("while one bath recovers the operator dips in the other, and waits only where both need it", () => {
  // Set up from 0 to 30, both hot at 75 and 90. Ten minutes to recover against four of a load elsewhere.
  expect(at([slowBath("a", 0, 3, { recovers: 10 }), slowBath("b", 1, 3, { recovers: 10 })])).toEqual([
    "75 dip a 1",
    "79 wait a 2",
    "89 dip a 2",
    "93 dip b 1",
    "97 wait a 3",
    "103 dip a 3",
    "107 dip b 2",
    "111 wait b 3",
    "121 dip b 3",
  ]);
});

test("a wait of up to a minute is no reason to go to another bath", () => {
  const order = (recovers: number): string[] =>
    at([slowBath("a", 0, 2, { recovers, heats: 15 }), slowBath("b", 1, 1, { heats: 0 })])
      .filter((entry) => entry.includes("dip"))
      .map((entry) => entry.split(" dip ")[1]!);
  expect(order(0.99)).toEqual(["a 1", "a 2", "b 1"]);
  expect(order(1.01)).toEqual(["a 1", "b 1", "a 2"]);
});

test("a heater goes on so that its bath is hot when its first load comes", () => {
  const { entries } = day([slowBath("a", 0, 5), slowBath("b", 1, 1, { heats: 20 })], []);
  const heat = (tank: string) => entries.find((entry) => entry.what === "heat" && entry.tank === tank)!;
  const first = (tank: string) => entries.find((entry) => entry.what === "dip" && entry.tank === tank)!;
  // The second bath could be hot at 50; it is there first, and the first one is ready from 75 on.
  expect([heat("b").endMinute, first("b").startMinute]).toEqual([50, 50]);
  expect([heat("a").endMinute, first("a").startMinute]).toEqual([75, 75]);
});

test("a tank that is used twice cools, is cleaned, set up and heated again, while the other is dipped in", () => {
  const { entries } = day(
    [slowBath("a", 0, 1), slowBath("a", 1, 1), slowBath("b", 2, 20, { heats: 61 })],
    [],
  );
  expect(entries.filter(({ tank }) => tank === "a").map(({ what, bath }) => `${what} ${bath}`)).toEqual([
    "set up 0",
    "heat 0",
    "dip 0",
    "cool 0",
    "clean up 0",
    "set up 1",
    "heat 1",
    "dip 1",
    "cool 1",
    "clean up 1",
  ]);
  const again = entries.find(({ what, bath }) => what === "set up" && bath === 1)!;
  const lastInB = entries.findLast(({ what, tank }) => what === "dip" && tank === "b")!;
  expect(again.endMinute).toBeLessThan(lastInB.startMinute);
});

test("the day ends when the last bath has cooled and its tank is clean, and the last dryer run is emptied", () => {
  const cooling = day([slowBath("a", 0, 1, { cools: 300 })]);
  expect(cooling.entries.at(-1)).toMatchObject({ what: "clean up", endMinute: 75 + 4 + 300 + 15 });
  expect(cooling.minutes).toBe(394);
  const drying = day([slowBath("a", 0, 1)]);
  expect(drying.entries.at(-1)).toMatchObject({ what: "dryer emptying", parts: 10 });
  // Half of the dryer's loading time goes into filling, half into emptying it.
  expect(drying.minutes).toBe(79 + 1.5 + 60 + 1.5);
});

test("of each wait for a bath the first ten minutes are work, cooling and waits for the dryer are not", () => {
  const hands = (recovers: number): number => day([slowBath("a", 0, 2, { recovers })], []).operatorMinutes;
  // Set-up, clean-up and two loads of four minutes.
  expect(hands(0)).toBe(38);
  expect(hands(9)).toBe(47);
  expect(hands(11)).toBe(48);
  expect(hands(200)).toBe(48);
});

test("whoever waits for a bath to heat cleans a tank that has cooled meanwhile, if there is time for it", () => {
  const what = (heats: number): string[] => {
    const baths = [slowBath("a", 0, 1, { heats: 0, cools: 5 }), slowBath("b", 1, 1, { heats })];
    return day(baths, []).entries.map((entry) => `${entry.what} ${entry.tank ?? ""}`);
  };
  const cleansFirst = (heats: number): boolean =>
    what(heats).indexOf("clean up a") < what(heats).indexOf("dip b");
  // The first bath is cool at 39; the second is hot at 30 + its heating.
  expect([cleansFirst(23), cleansFirst(25)]).toEqual([false, true]);
});
