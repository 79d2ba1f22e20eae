import { describe, expect, test } from "vitest";
import type { Batch, Bath, Dye, Order, Shade, Tank } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import { SharedWork } from "../../../src/core/plan/run/shared-work.js";
import { planWeek } from "../../../src/core/week/week.js";
import type { Week, WeekWish } from "../../../src/core/week/week-model.js";
import { batch, bath, dye, hook, light, tank, tray } from "../plan/sample.js";
import { smallWeek } from "./tools/small-weeks.js";

const moss: Dye = { ...dye, name: "moss", stock: 900, leadTimeDays: 7 };
const green: Shade = { ...light, name: "green", dye: moss };
const ten: Tank = { ...tank, name: "ten", volumeL: 10, capacityL: 12, heaterW: 1100 };

const order = (shade: Shade | undefined, quantity: number, due?: string): Order => ({
  index: 0,
  part: hook,
  quantity,
  ...(shade === undefined ? {} : { shade }),
  ...(due === undefined ? {} : { due }),
});

/** A shop of two tanks with a dye each. */
const shop = (...orders: readonly Order[]): Batch => ({
  ...batch,
  handling: { ...batch.handling, rinses: 2 },
  dyes: [dye, moss],
  shades: [light, green],
  tanks: [tank, ten],
  baths: [bath, { ...bath, index: 1, tank: ten, dye: moss }],
  orders: orders.map((one, index) => ({ ...one, index })),
});

const wish: WeekWish = {
  people: 1,
  from: "2027-04-12",
  weekdays: [1, 2, 3, 4, 5],
  dayMinutes: 240,
  dayAssumed: false,
};

function weekOf(batches: readonly [Batch, ...Batch[]], changes: Partial<WeekWish> = {}): Week {
  const week = planWeek(batches, { ...wish, ...changes }, new SharedWork());
  if (!week.ok) throw new Error(JSON.stringify(week.faults));
  return week.value;
}

const faultsOf = (batches: readonly [Batch, ...Batch[]], changes: Partial<WeekWish> = {}) =>
  planWeek(batches, { ...wish, ...changes }, new SharedWork()).faults;

describe("a day of the week", () => {
  test("takes the minutes that plan gives for the same orders and baths", () => {
    const all = shop(order(light, 60), order(green, 40));
    const { days } = weekOf([all], { dayMinutes: 480 });
    const plan = planBatch(all);
    if (!plan.ok) throw new Error("no plan");
    expect(days).toHaveLength(1);
    expect(days[0]!.minutes).toBe(plan.value.totals.minutes);
    expect(days[0]!.people[0]!.plan.baths.map(({ loads }) => loads)).toEqual(
      plan.value.baths.map(({ loads }) => loads),
    );
  });

  test("holds no more than its hours, and the next day starts from what it left", () => {
    const { days, baths } = weekOf([shop(order(light, 90), order(light, 90))], { dayMinutes: 300 });
    expect(days.map(({ date }) => date)).toEqual(["2027-04-12", "2027-04-13"]);
    for (const { minutes } of days) expect(minutes).toBeLessThanOrEqual(300);
    expect(baths[0]!.start).toEqual({ kind: "fresh" });
    const [first] = days[0]!.people[0]!.plan.baths;
    const { volumeL, strength, areaDm2 } = first!.carryOver!;
    expect(baths[1]!.start).toEqual({ kind: "kept", volumeL, strength, areaDm2, ageDays: 1 });
    expect(days[1]!.people[0]!.plan.baths[0]!.start).toEqual(baths[1]!.start);
  });

  test("is one of the days that are worked, and a bath grows older over the others", () => {
    const { days, baths } = weekOf([shop(order(light, 90), order(light, 90))], {
      dayMinutes: 300,
      weekdays: [5],
    });
    expect(days.map(({ date }) => date)).toEqual(["2027-04-16", "2027-04-23"]);
    expect(baths[1]!.start).toMatchObject({ ageDays: 7 });
  });

  test.each([
    [6, { start: { kind: "fresh" }, renewed: true }],
    [7, { start: { kind: "kept", ageDays: 7 }, renewed: false }],
  ])("makes a bath of 7 days up anew where its shelf life is %d days", (shelfLifeDays, second) => {
    const short = { ...dye, shelfLifeDays };
    const old = shop(order(light, 90), order(light, 90));
    const { baths } = weekOf(
      [
        {
          ...old,
          dyes: [short, moss],
          shades: [{ ...light, dye: short }, green],
          baths: [{ ...bath, dye: short }, old.baths[1]!],
          orders: old.orders.map((one) => ({ ...one, shade: { ...light, dye: short } })),
        },
      ],
      { dayMinutes: 300, weekdays: [5] },
    );
    expect(baths[1]).toMatchObject(second);
  });

  test("starts fresh where the bath is dumped", () => {
    const one = shop(order(light, 90), order(light, 90));
    const { baths } = weekOf([{ ...one, baths: [{ ...bath, after: "dump" }, one.baths[1]!] }], {
      dayMinutes: 300,
    });
    expect(baths.map(({ start, strengthAfter }) => [start.kind, strengthAfter])).toEqual([
      ["fresh", null],
      ["fresh", null],
    ]);
  });
});

describe("orders of a week", () => {
  test("are taken by their due dates before anything else where those press", () => {
    const { orders } = weekOf([
      shop(order(light, 45), order(light, 45, "2027-04-13"), order(green, 100, "2027-04-12")),
    ]);
    expect(orders.map(({ readyDate }) => readyDate)).toEqual(["2027-04-13", "2027-04-13", "2027-04-12"]);
    expect(orders.map(({ lateDays }) => lateDays)).toEqual([0, 0, 0]);
  });

  test("of one bath share a day where no due date is in the way", () => {
    const { orders, baths } = weekOf([shop(order(light, 30), order(green, 110), order(light, 30))]);
    expect(orders[0]!.readyDate).toBe(orders[2]!.readyDate);
    expect(baths).toHaveLength(2);
  });

  test("that are late say by how many days, at the due date of their file", () => {
    const first = shop(order(green, 110, "2027-04-12"));
    const second = shop(order(light, 100, "2027-04-12"));
    const { orders } = weekOf([first, second]);
    expect(orders.map(({ lateDays }) => lateDays)).toEqual([0, 1]);
    expect(faultsOf([first, second])).toContainEqual({
      code: "order-late",
      severity: "warning",
      path: [1, "orders", 0, "due"],
      message: "hook in light is ready on 2027-04-13, 1 day after it is due on 2027-04-12",
      help: "more hours, a second person or a later date would help",
    });
  });

  test("that no day holds are split over as few days as hold them", () => {
    const { orders, days } = weekOf([shop(order(light, 400))]);
    const [row] = orders;
    expect(row!.days.length).toBeGreaterThan(1);
    expect(row!.days.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(400);
    expect(row!.readyDate).toBe(days.at(-1)!.date);
    // One part more would not fit.
    const { quantity } = row!.days[0]!;
    expect(weekOf([shop(order(light, quantity))]).days).toHaveLength(1);
    expect(weekOf([shop(order(light, quantity + 1))]).days).toHaveLength(2);
  });

  test("that no day holds begin on the first day where they are due first", () => {
    const { orders } = weekOf([shop(order(green, 90), order(light, 250, "2027-04-14"), order(green, 80))]);
    expect(orders.map(({ days }) => days.length)).toEqual([1, 3, 1]);
    expect(orders[1]).toMatchObject({ readyDate: "2027-04-14", lateDays: 0 });
    expect(orders[1]!.days[0]!.date).toBe("2027-04-12");
  });

  test("that no day holds begin in what is left of a day on which their bath is on already, and only there", () => {
    const begins = (long: Shade) =>
      weekOf([shop(order(light, 20, "2027-04-12"), order(long, 400, "2027-04-30"))]).orders[1]!.days[0]!;
    const [first, other] = [begins(light), begins(green)];
    expect([first.date, other.date]).toEqual(["2027-04-12", "2027-04-13"]);
    // One part more would not fit beside the order that was on.
    const together = (quantity: number) =>
      weekOf([shop(order(light, 20), order(light, quantity))]).days.length;
    expect([together(first.quantity), together(first.quantity + 1)]).toEqual([1, 2]);
  });

  test("that take 65 days are planned, and more are refused, however many they are", () => {
    const [{ quantity } = { quantity: 0 }] = weekOf([shop(order(light, 400))]).orders[0]!.days;
    expect(weekOf([shop(order(light, Math.round(64.5 * quantity)))]).days).toHaveLength(65);
    for (const days of [65.5, 1e6])
      expect(faultsOf([shop(order(light, Math.round(quantity * days)))])).toEqual([
        expect.objectContaining({ code: "too-many-days", path: [0, "orders", 0, "quantity"] }),
      ]);
  });

  test("that are not dyed are ready when the first day begins", () => {
    const { orders, days } = weekOf([shop(order(undefined, 12))]);
    expect(orders[0]).toMatchObject({ shade: "none", readyDate: "2027-04-12", readyMinute: 0 });
    expect(days).toEqual([]);
  });

  test("are ready when the dryer that holds their last parts is emptied", () => {
    const { orders, days } = weekOf([shop(order(light, 50), order(light, 50))], { dayMinutes: 480 });
    const emptied = days[0]!.people[0]!.plan.timeline.filter(({ what }) => what === "dryer emptying").map(
      ({ endMinute }) => endMinute,
    );
    expect(emptied).toHaveLength(2);
    expect(orders.map(({ readyMinute }) => readyMinute)).toEqual(emptied);
  });

  test("are ready when their last load is out of the bath where there is no dryer", () => {
    const { orders, days } = weekOf([{ ...shop(order(light, 20)), dryers: [] }]);
    const dips = days[0]!.people[0]!.plan.timeline.filter(({ what }) => what === "dip");
    expect(orders[0]!.readyMinute).toBe(dips.at(-1)!.endMinute);
  });

  test("longer than a day with one part are refused", () => {
    expect(faultsOf([shop(order(light, 2))], { dayMinutes: 60 })).toContainEqual(
      expect.objectContaining({ code: "day-too-short", path: [0, "orders", 0] }),
    );
  });

  test("whose dye no bath of any file has are refused at their place", () => {
    const none = { ...shop(order(light, 2)), baths: [] };
    expect(faultsOf([shop(order(light, 2)), none])).toEqual([]);
    expect(faultsOf([none, none])).toContainEqual(
      expect.objectContaining({ code: "no-bath", path: [0, "orders", 0] }),
    );
  });
});

describe("two people", () => {
  const both = shop(order(light, 90), order(green, 90));

  test("have tanks of their own and are done sooner than one", () => {
    const one = weekOf([both], { dayMinutes: 480 }).days[0]!;
    const two = weekOf([both], { dayMinutes: 480, people: 2 }).days[0]!;
    expect(two.people.map(({ plan }) => plan.baths.map((own) => own.tank))).toEqual([["six"], ["ten"]]);
    expect(two.minutes).toBeLessThan(one.minutes);
    expect(two.minutes).toBe(Math.max(...two.people.map(({ plan }) => plan.totals.minutes)));
  });

  test("have half of the places of the only dryer, or one each of two", () => {
    const dryers = (some: Batch["dryers"]) =>
      weekOf([{ ...both, dryers: some }], { dayMinutes: 480, people: 2 }).days[0]!.people.map(({ plan }) => [
        plan.dryer!.name,
        plan.dryer!.capacity,
      ]);
    const [trays] = batch.dryers;
    expect(dryers([trays!])).toEqual([
      ["trays", 30],
      ["trays", 30],
    ]);
    expect(dryers([trays!, { ...trays!, name: "rack", capacity: 40 }])).toEqual([
      ["trays", 60],
      ["rack", 40],
    ]);
  });

  test("are one where all work is in one tank", () => {
    const alone = shop(order(light, 90));
    const two = weekOf([alone], { dayMinutes: 480, people: 2 }).days[0]!;
    expect(two.people).toHaveLength(1);
    expect(two.minutes).toBe(weekOf([alone], { dayMinutes: 480 }).days[0]!.minutes);
  });

  test("are late on no more days than one, nor take more days, in random weeks", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { batch: one, wish: asked } = smallWeek(seed);
      const [alone, both] = ([1, 2] as const).map((people) => weekOf([one], { ...asked, people }));
      const late = (week: Week): number => week.orders.reduce((sum, { lateDays }) => sum + lateDays, 0);
      expect(late(both!)).toBeLessThanOrEqual(late(alone!));
      if (late(both!) === late(alone!)) expect(both!.days.length).toBeLessThanOrEqual(alone!.days.length);
    }
  });

  test("leave tanks together that hold one dye", () => {
    const spare: Tank = { ...tank, name: "spare" };
    const three: Batch = {
      ...both,
      tanks: [tank, ten, spare],
      baths: [...both.baths, { ...bath, index: 2, tank: spare }],
    };
    const two = weekOf([three], { dayMinutes: 480, people: 2 }).days[0]!;
    const tanks = two.people.map(({ plan }) => plan.baths.map((own) => own.tank).sort());
    expect(tanks).toContainEqual(["six", "spare"]);
    expect(tanks).toContainEqual(["ten"]);
  });
});

describe("what to order", () => {
  const stocked = { ...hook, stock: new Map([["white", 50]]), leadTimeDays: 3 };
  const white = { name: "white" };
  const onWhite = (shade: Shade | undefined, quantity: number): Order => ({
    ...order(shade, quantity),
    part: stocked,
    base: white,
  });
  const two: Batch = {
    ...shop(onWhite(light, 40), onWhite(green, 110), onWhite(undefined, 5)),
    parts: [stocked, tray],
    bases: [white],
  };

  test("is what the week uses beyond the shelf, a lead time before the first day that lacks some", () => {
    const { toOrder, days } = weekOf([two], { dayMinutes: 200 });
    const used = days.flatMap(({ people }) =>
      people.flatMap(({ plan }) => plan.orders.map((one) => one.started)),
    );
    const blanks = 5 + used.reduce((sum, one) => sum + one, 0);
    expect(toOrder.find(({ kind }) => kind === "blank")).toEqual({
      kind: "blank",
      name: "hook",
      base: "white",
      unit: "parts",
      used: blanks,
      stock: 50,
      short: blanks - 50,
      shortFrom: "2027-04-13",
      leadTimeDays: 3,
      orderBy: "2027-04-09",
    });
    const poured = days
      .flatMap(({ people }) => people.flatMap(({ plan }) => plan.baths))
      .filter((one) => one.dye === "moss")
      .map(({ start, dyeBalance }) => {
        const { startMl, addedMl } = dyeBalance as { startMl: number; addedMl: number };
        return (start.kind === "fresh" ? startMl : 0) + addedMl;
      })
      .reduce((sum, one) => sum + one, 0);
    expect(poured).toBeGreaterThan(900);
    expect(toOrder.find(({ name }) => name === "moss")).toMatchObject({
      used: poured,
      stock: 900,
      short: poured - 900,
      orderBy: "2027-04-06",
    });
    expect(toOrder.find(({ name }) => name === "coral")).toMatchObject({
      stock: null,
      short: 0,
      orderBy: null,
    });
  });

  test("counts a stock of one number for all bases together", () => {
    const part = { ...hook, stock: 20, leadTimeDays: 0 };
    const some = [
      onWhite(light, 12),
      onWhite(undefined, 9),
      { ...order(undefined, 5), base: { name: "grey" } },
    ];
    const inAll = {
      ...two,
      parts: [part, tray],
      orders: some.map((one, index) => ({ ...one, part, index })),
    };
    const { toOrder, days } = weekOf([inAll]);
    // It can still be ordered on the first day.
    expect(faultsOf([inAll])).toEqual([]);
    const { started } = days[0]!.people[0]!.plan.orders[0]!;
    expect(toOrder.filter(({ kind }) => kind === "blank")).toEqual([
      expect.objectContaining({ base: null, used: 14 + started, short: started - 6, orderBy: "2027-04-12" }),
    ]);
  });

  test("is a warning where the last day to order it is past", () => {
    expect(faultsOf([two], { dayMinutes: 200 })).toContainEqual(
      expect.objectContaining({ code: "order-by-passed", path: [0, "parts", "hook", "leadTime"] }),
    );
    const sooner = { ...stocked, leadTimeDays: 1 };
    const orders = two.orders.filter(({ shade }) => shade !== green).map((one) => ({ ...one, part: sooner }));
    expect(faultsOf([{ ...two, parts: [sooner, tray], orders }], { dayMinutes: 200 })).toEqual([]);
  });
});

describe("batches of one week", () => {
  test("have one bath of a tank and a dye: the kept start wins over a fresh one", () => {
    const kept = { kind: "kept", volumeL: 5.6, strength: 0.9, ageDays: 3, areaDm2: 40 } as const;
    const first = shop(order(light, 20));
    const second = { ...first, baths: [{ ...bath, start: kept }, first.baths[1]!] };
    expect(weekOf([first, second]).baths[0]!.start).toEqual(kept);
  });

  test("share a bath from one row of a log, which grows older from the day that its age is of", () => {
    const log = { file: "baths.csv", row: 9, time: "2027-04-06T10:00:00" };
    const first = shop(order(light, 20));
    const dated = (ageDays: number, date?: string): Batch => ({
      ...first,
      ...(date === undefined ? {} : { date }),
      baths: [
        { ...bath, start: { kind: "kept", volumeL: 5.8, strength: 1, ageDays, areaDm2: 9, log } },
        first.baths[1]!,
      ],
    });
    expect(weekOf([dated(2)]).baths[0]!.start).toMatchObject({ ageDays: 8 });
    expect(weekOf([dated(6, "2027-04-10"), dated(8, "2027-04-12")]).baths[0]!.start).toMatchObject({
      ageDays: 8,
    });
  });

  test("that keep a bath otherwise are refused", () => {
    const first = shop(order(light, 20));
    const dumped = { ...first, baths: [{ ...bath, after: "dump" as const }, first.baths[1]!] };
    expect(faultsOf([first, dumped])).toContainEqual(
      expect.objectContaining({ code: "bath-differs", path: [1, "baths", 0, "after"] }),
    );
    const start = (strength: number): Batch => ({
      ...first,
      baths: [
        { ...bath, start: { kind: "kept", volumeL: 6, strength, ageDays: 0, areaDm2: 0 } },
        first.baths[1]!,
      ],
    });
    expect(faultsOf([start(0.9), start(0.8)])).toContainEqual(
      expect.objectContaining({ code: "bath-differs", path: [1, "baths", 0, "start"] }),
    );
  });

  test("that have one bath twice in a file are worked with one of them, and that is a warning", () => {
    const one = shop(order(light, 20));
    const twice = { ...one, baths: [...one.baths, { ...bath, index: 2 }] };
    expect(faultsOf([twice])).toContainEqual(
      expect.objectContaining({ code: "bath-twice", severity: "warning", path: [0, "baths", 2] }),
    );
    expect(faultsOf([one, one]).map(({ code }) => code)).not.toContain("bath-twice");
  });

  test("that have a trial of a bath only where it is not used are refused", () => {
    const at = (fields: Partial<Bath>): Batch => {
      const one = shop(order(light, 20));
      return { ...one, baths: [{ ...bath, ...fields }, one.baths[1]!] };
    };
    const trial = (seconds: number) => ({
      trial: { seconds, colour: { kind: "lab" as const, lab: [60, 40, 20] as const } },
    });
    const kept = { start: { kind: "kept" as const, volumeL: 6, strength: 0.9, ageDays: 0, areaDm2: 0 } };
    const refusedAt = (...batches: readonly [Batch, Batch]) =>
      faultsOf(batches)
        .filter(({ code, path }) => code === "bath-differs" && path.at(-1) === "trial")
        .map(({ path }) => path[0]);
    expect(refusedAt(at({}), at(trial(45)))).toEqual([1]);
    expect(refusedAt(at(trial(60)), at(trial(45)))).toEqual([1]);
    expect(refusedAt(at(trial(45)), at(kept))).toEqual([0]);
    expect(refusedAt(at(trial(45)), at({}))).toEqual([]);
    expect(refusedAt(at(trial(45)), at(trial(45)))).toEqual([]);
    expect(refusedAt(at({}), at({ ...kept, ...trial(45) }))).toEqual([]);
  });

  test("use things of one name as one, whichever file they are written in", () => {
    const copy = (one: Batch): Batch => structuredClone(one);
    const first = shop(order(light, 20));
    const { baths } = weekOf([first, copy(first)]);
    expect(baths).toHaveLength(1);
  });
});
