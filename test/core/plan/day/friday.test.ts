import fc from "fast-check";
import { expect, test } from "vitest";
import type { TimelineEntry } from "../../../../src/core/plan/day/timeline.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import type { Plan, PlanBath } from "../../../../src/core/plan/plan-model.js";
import { batches } from "../arbitrary.js";
import { batch, bath, dye, handling, hook, order, tank, tray } from "../sample.js";

/** A tank with a weak heater and one with a strong one; the first is used for a second dye after it has cooled. */
const [coral, navy, moss] = ["coral", "navy", "moss"].map((name) => ({ ...dye, name })) as [
  typeof dye,
  typeof dye,
  typeof dye,
];
const five = { ...tank, name: "five", volumeL: 5, capacityL: 6.2, heaterW: 1500 };
const shade = (of: typeof dye, seconds: number) => ({
  name: `${of.name}-${seconds}`,
  dye: of,
  target: { kind: "time" as const, seconds },
  tolerance: 1.5,
});
const timed = { topUpSeconds: 60, rinseChangeSeconds: 40, rinseEvery: 2 };
const friday = {
  ...batch,
  dyes: [coral, navy, moss],
  tanks: [tank, five],
  baths: [
    { ...bath, index: 0, dye: coral },
    { ...bath, index: 1, tank: five, dye: navy },
    { ...bath, index: 2, dye: moss },
  ],
  orders: [
    order(0, hook, shade(coral, 30), 120),
    order(1, tray, shade(coral, 90), 30),
    order(2, hook, shade(navy, 60), 90),
    order(3, tray, shade(navy, 120), 20),
    order(4, hook, shade(moss, 45), 60),
  ],
  handling: { ...handling, ...timed },
};

function planned(input: typeof batch): Plan {
  const plan = planBatch(input);
  if (!plan.ok) throw new Error(plan.faults.map(({ message }) => message).join("; "));
  return plan.value;
}

const unattended = ["heat", "dry", "cool"];
const handsOn = ({ timeline }: Plan): TimelineEntry[] =>
  timeline.filter(({ what }) => !unattended.includes(what));

/** Where one stretch of the hands begins before the one before it has ended. */
const clashes = (entries: readonly TimelineEntry[]): TimelineEntry[] =>
  entries.filter((entry, i) => i > 0 && entry.startMinute < entries[i - 1]!.endMinute - 1e-9);

const racked = (parts: number): number => handling.loadSeconds + parts * handling.loadPartSeconds;
const off = (parts: number): number =>
  handling.drainSeconds + handling.rinseSeconds + handling.unloadSeconds + parts * handling.unloadPartSeconds;

/** What the hands do for each load, added up from the sheet alone [s]. */
const handSeconds = ({ loads }: PlanBath): number[] =>
  loads.map(
    ({ parts, dipSeconds, topUp }, i) =>
      (i > 0 && i % timed.rinseEvery === 0 ? timed.rinseChangeSeconds : 0) +
      racked(parts) +
      dipSeconds +
      off(parts) +
      (topUp === null ? 0 : timed.topUpSeconds),
  );

test("a Friday with two tanks and three dyes is worked minute by minute by one person in one place", () => {
  const plan = planned(friday);
  const entries = handsOn(plan);
  expect(clashes(entries)).toEqual([]);
  // No minute of the day is missing between one thing and the next, up to the last.
  entries.slice(1).forEach((entry, i) => {
    expect(entry.startMinute).toBeCloseTo(entries[i]!.endMinute, 9);
  });
  plan.baths.forEach((of, index) => {
    const dips = entries.filter(({ what, bath: at }) => what === "dip" && at === index);
    const seconds = handSeconds(of);
    expect(dips.length).toBe(seconds.length);
    dips.forEach(({ startMinute, endMinute }, i) => {
      expect(60 * (endMinute - startMinute)).toBeCloseTo(seconds[i]!, 6);
    });
    // Hot before its first load, and the tank's next bath is not set up before this one has cooled and been cleaned.
    const only = (what: string) =>
      plan.timeline.find((entry) => entry.what === what && entry.bath === index)!;
    expect(dips[0]!.startMinute).toBeGreaterThanOrEqual(only("heat").endMinute - 1e-9);
    expect(only("cool").startMinute).toBeCloseTo(dips.at(-1)!.endMinute, 9);
    expect(only("clean up").startMinute).toBeGreaterThanOrEqual(only("cool").endMinute - 1e-9);
  });
  const tops = plan.baths.map(({ loads }) => loads.filter(({ topUp }) => topUp !== null).length);
  expect(Math.max(...tops)).toBeGreaterThan(0);
  const at = (what: string, index: number) =>
    plan.timeline.find((entry) => entry.what === what && entry.bath === index)!;
  expect(at("set up", 2).startMinute).toBeCloseTo(at("clean up", 0).endMinute, 9);
});

test("a top-up and a change of rinse water lengthen the cycle of their load, and the labour, by just their time", () => {
  // Heaters without end and warm top-ups: the bath is as hot after a longer cycle as after a short one.
  const strong = (of: typeof batch) => ({
    ...of,
    baths: of.baths.map((one) => ({ ...one, tank: { ...one.tank, heaterW: 60_000 } })),
  });
  const { topUpSeconds: _, rinseChangeSeconds: __, ...untimed } = friday.handling;
  const [with_, without] = [planned(strong(friday)), planned(strong({ ...friday, handling: untimed }))];
  let changes = 0;
  let topUps = 0;
  with_.baths.forEach(({ loads }, b) => {
    loads.forEach(({ cycleSeconds, dipSeconds, topUp }, i) => {
      const other = without.baths[b]!.loads[i]!;
      const changed = i > 0 && i % 2 === 0;
      if (changed) changes++;
      if (topUp !== null) topUps++;
      const more = cycleSeconds - dipSeconds - (other.cycleSeconds - other.dipSeconds);
      expect(more).toBeCloseTo((changed ? 40 : 0) + (topUp === null ? 0 : 60), 9);
    });
  });
  const dips = (plan: Plan): number =>
    plan.baths.flatMap(({ loads }) => loads).reduce((sum, { dipSeconds }) => sum + dipSeconds, 0);
  const labour = (plan: Plan): number => plan.orders.reduce((sum, { lines }) => sum + lines!.labour, 0);
  const seconds = 40 * changes + 60 * topUps + dips(with_) - dips(without);
  expect(labour(with_) - labour(without)).toBeCloseTo((34 * seconds) / 3600, 9);
});

test("the sheet says which work of the hands it does not count, and only where there is such work", () => {
  const said = (input: typeof batch): string[] =>
    planned(input)
      .assumptions.filter(({ code }) => code === "uncounted-time")
      .map(({ message }) => message);
  const { topUpSeconds: _, rinseChangeSeconds: __, ...untimed } = friday.handling;
  const one = { ...friday, baths: friday.baths.slice(0, 1), orders: [friday.orders[0]!] };
  expect(said(friday)).toEqual([]);
  expect(said({ ...friday, handling: { ...untimed, topUpSeconds: 0, rinseChangeSeconds: 0 } })).toEqual([]);
  expect(said({ ...friday, handling: untimed })).toEqual([
    "topping up takes no time in this day: write topUpTime under handling",
    "changing the rinse water takes no time in this day: write rinseChange under handling",
  ]);
  const few = { ...one, baths: [{ ...one.baths[0]!, topUp: "none" as const }] };
  const loads = planned(few).baths[0]!.loads.length;
  const every = (rinseEvery: number) => said({ ...few, handling: { ...untimed, rinseEvery } });
  expect(every(loads)).toEqual([]);
  expect(every(loads - 1)).toEqual([
    "changing the rinse water takes no time in this day: write rinseChange under handling",
  ]);
});

test("nobody is in two places at once, in any day of one or two dyes in up to four tanks", () => {
  let days = 0;
  fc.assert(
    fc.property(batches, (input) => {
      const plan = planBatch({ ...input, handling: { ...input.handling, ...timed } });
      if (!plan.ok) return;
      days++;
      expect(clashes(handsOn(plan.value))).toEqual([]);
    }),
    { numRuns: 60, seed: 5, endOnFailure: true },
  );
  expect(days).toBeGreaterThan(30);
});
