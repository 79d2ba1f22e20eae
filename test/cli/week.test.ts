import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const run = (args: readonly string[], files?: ReadonlyMap<string, string>) =>
  runFake(["week", ...args], folderIo(examples, files));
const asked = ["--from", "2027-04-12", "--hours-a-day", "6h"];

for (const format of ["text", "json", "csv", "markdown"])
  test(`week prints days, baths, and what is ready and to order as ${format}`, async () => {
    const { status, out, err } = await run(["shop.yaml", "fair.yaml", ...asked, "--format", format]);
    expect(status).toBe(0);
    expect(err.match(/warning\[[\w-]+\]/g)).toEqual(Array(3).fill("warning[order-by-passed]"));
    await expect(out).toMatchFileSnapshot(`golden/week/fair.${format === "text" ? "txt" : format}`);
  });

test.each(["baths", "stock"])("week prints rows of %s", async (rows) => {
  const { status, out } = await run(["shop.yaml", "fair.yaml", ...asked, "--format", "csv", "--rows", rows]);
  expect(status).toBe(0);
  await expect(out.replace(/,cautions(?=\r)|,"Liquor.*?"(?=\r)|,(?=\r)/g, "")).toMatchFileSnapshot(
    `golden/week/${rows}.csv`,
  );
});

test("week has the keys that scripts rely on", async () => {
  const week = JSON.parse((await run(["shop.yaml", "fair.yaml", ...asked, "--format", "json"])).out);
  expect(week.schema).toBe("dipwright/week@1");
  expect(week).toMatchObject({ people: 1, from: "2027-04-12", weekdays: [1, 2, 3, 4, 5], dayMinutes: 360 });
  expect(week.orders[0]).toMatchObject({
    batch: "shop-offer",
    order: 1,
    readyDate: "2027-04-12",
    readyMinute: expect.any(Number),
    ready: expect.stringMatching(/^2027-04-12T\d\d:\d\d$/),
    due: "2027-04-13",
    lateDays: 0,
  });
  expect(week.days[0].people[0].baths[0]).toMatchObject({
    tank: "five",
    dye: "amber",
    loads: expect.any(Array),
  });
  expect(week.toOrder[0]).toMatchObject({ kind: "dye", name: "amber", unit: "mL", used: expect.any(Number) });
  expect(week.length).toMatchObject({ minutes: expect.any(Number), leastMinutes: expect.any(Number) });
});

const minutesOf = async (args: readonly string[], files?: ReadonlyMap<string, string>) =>
  JSON.parse((await run([...args, "--format", "json"], files)).out).days.map(
    ({ minutes }: { readonly minutes: number }) => minutes,
  );

test("a day of week takes the minutes that plan says of it", async () => {
  const plan = JSON.parse((await runFake(["plan", "shop.yaml", "--format", "json"], folderIo(examples))).out);
  expect(await minutesOf(["shop.yaml", "--from", "2027-04-12"])).toEqual([plan.totals.minutes]);
});

test("an order that is moved is made earlier, and another one later", async () => {
  const ready = async (...more: readonly string[]) => {
    const asked = ["shop.yaml", "--from", "2027-04-12", "--hours-a-day", "3h", "--format", "json", ...more];
    const { status, out } = await run(asked);
    const { orders } = JSON.parse(out);
    return [status, orders[2].readyDate, orders[9].readyDate];
  };
  expect(await ready()).toEqual([0, "2027-04-14", "2027-04-12"]);
  expect(await ready("--set", "orders.2.due=2027-04-12")).toEqual([0, "2027-04-12", "2027-04-14"]);
});

test("an order that is late is marked, and the exit status is 1", async () => {
  const { status, out, err } = await run([
    ...["shop.yaml", "--from", "2027-04-12", "--hours-a-day", "3h", "--set", "orders.3.due=2027-04-11"],
  ]);
  expect(status).toBe(1);
  expect(out).toMatch(/ 4 {4}24 {2}peg amber-deep on white +Sun 04-11 {2}\d d late/);
  expect(out).toContain("1 of 12 orders is late.");
  expect(err).toContain("warning[order-late]");
  expect(err).toContain("the first day of work is 2027-04-12: give the order a later date");
});

test("a late order says what would bring it to its date", async () => {
  const said = async (...more: string[]) => {
    const { err } = await run(["shop.yaml", "--from", "2027-04-12", "--hours-a-day", "3h", ...more]);
    return err.replace(/\s+/g, " ");
  };
  const all = [0, 1, 2, 3, 4, 6, 8, 9, 10].flatMap((i) => ["--set", `orders.${i}.due=2027-04-12`]);
  expect(await said(...all)).toContain("help: more hours, a second person or a later date would help");
  expect(await said(...all, "--people", "2")).toContain("help: more hours or a later date would help");
  expect(await said("--set", "orders.11.due=2027-04-13", "--days", "sun")).toContain(
    "help: the first day of work is 2027-04-18: give the order a later date",
  );
  expect(await said("--set", "orders.11.due=2027-04-11")).toContain(
    "warning[order-late]: undyed bowl is ready on 2027-04-12, 1 day after it is due on 2027-04-11",
  );
});

const floor = "include: shop-floor.yaml\n";
const one = (changes: string): string =>
  `batch: more\n${floor}${changes}orders:\n  - { part: knob, shade: amber-pale, base: white, quantity: 5 }\n`;

test("files that give one name to two things are refused at both their places", async () => {
  const files = new Map([
    [
      "other.yaml",
      `batch: other
tanks:
  five: { volume: 6 L, heater: 700 W }
dyes:
  amber: { dilution: 1:9, temperature: 78 °C, rate: 0.01 /s }
parts:
  knob: { mass: 4.1 g, area: 28 cm2 }
shades:
  amber-pale: { dye: amber, time: 25 s }
baths:
  - { tank: five, dye: amber }
orders:
  - { part: knob, shade: amber-pale, quantity: 5 }
`,
    ],
  ]);
  const { status, out, err } = await run(["shop.yaml", "other.yaml", ...asked], files);
  expect([status, out]).toEqual([2, ""]);
  await expect(err).toMatchFileSnapshot("golden/week/differs.txt");
});

test("a bath that two files keep otherwise is refused", async () => {
  const bath = (after: string): string => one(`baths:\n  - { tank: ten, dye: amber, after: ${after} }\n`);
  const files = new Map([
    ["a.yaml", bath("keep")],
    ["b.yaml", bath("dump")],
  ]);
  const { status, err } = await run(["a.yaml", "b.yaml", ...asked], files);
  expect(status).toBe(2);
  expect(err).toContain("b.yaml:4:37\nerror[bath-differs]");
  expect(err.replace(/\s+/g, " ")).toContain('has after: dump here and after: keep in batch "more"');
});

test("the first day is the earliest date of the files, or must be given", async () => {
  const files = new Map([
    ["a.yaml", one("date: 2027-05-04\n")],
    ["b.yaml", one("date: 2027-05-03\n")],
  ]);
  expect((await run(["a.yaml", "b.yaml"], files)).out).toContain("Week from Mon 2027-05-03: more, more");
  const { status, err } = await run(["shop.yaml"]);
  expect([status, err]).toEqual([
    2,
    "error[usage]: --from: the first day is missing: no file has a date:\n  help: write --from 2027-04-12\n",
  ]);
});

test("options that cannot be used are all reported", async () => {
  const { status, err } = await run([
    ...["shop.yaml", "--from", "monday", "--people", "3", "--days", "mon-fry", "--hours-a-day", "30h"],
  ]);
  expect(status).toBe(2);
  expect(err.match(/error\[\w+\]: --[\w-]+/g)).toEqual([
    "error[usage]: --from",
    "error[usage]: --people",
    "error[usage]: --days",
    "error[range]: --hours-a-day",
  ]);
  expect((await run(["shop.yaml", "--from", "9999-12-31"])).err).toContain(
    'error[usage]: --from: "9999-12-31" is not a day of the years 1900 to 2999\n',
  );
  expect((await run(["shop.yaml", ...asked, "--hours-a-day", "6"])).err).toContain("help: write 6 h\n");
});

test.each([
  ["mon-fri", [1, 2, 3, 4, 5]],
  ["mon,wed", [1, 3]],
  ["Friday-Monday", [1, 5, 6, 7]],
  ["sat", [6]],
  ["tues,Thurs", [2, 4]],
])("--days %s is read", async (days, weekdays) => {
  const { out } = await run(["shop.yaml", ...asked, "--days", days, "--format", "json"]);
  expect(JSON.parse(out).weekdays).toEqual(weekdays);
});

test("a day has eight hours where nobody says, and up to 24", async () => {
  const { out } = await run(["shop.yaml", "--from", "2027-04-12", "--format", "json"]);
  expect(JSON.parse(out)).toMatchObject({ dayMinutes: 480, dayAssumed: true });
  const status = async (hours: string) =>
    (await run(["shop.yaml", "--from", "2027-04-12", "--hours-a-day", hours])).status;
  expect([await status("24h"), await status("24.01h")]).toEqual([0, 2]);
});

test.each(["monkey", "mo", "mon-fridays", "mon--fri", "mon-", ""])("--days %j is refused", async (days) => {
  const { status, err } = await run(["shop.yaml", ...asked, "--days", days]);
  expect([status, err]).toEqual([2, expect.stringContaining(`--days: "${days}" does not name days`)]);
});

test("files that begin work at different times are refused, and one may leave it out", async () => {
  const errors = async (a: string, b: string) => {
    const files = new Map([
      ["a.yaml", one(a)],
      ["b.yaml", one(b)],
    ]);
    return (await run(["a.yaml", "b.yaml", ...asked], files)).err.match(/error\[.*/g);
  };
  expect(await errors("startAt: 08:00\n", "startAt: 09:00\n")).toEqual([
    "error[differs]: startAt is not the same here as in a.yaml",
  ]);
  expect(await errors("startAt: 08:00\n", "startAt: 8:00\n")).toBeNull();
  expect(await errors("", "startAt: 09:00\n")).toBeNull();
});

test("orders without any dye are ready at once", async () => {
  const files = new Map([
    [
      "plain.yaml",
      `batch: plain\n${floor}orders:\n  - { part: knob, shade: none, base: white, quantity: 5 }\n`,
    ],
  ]);
  const { status, out } = await run(["plain.yaml", ...asked], files);
  expect(status).toBe(0);
  expect(out.replace(/\s+/g, " ")).toContain("No order is dyed. No order has a due date.");
});

const sheet = ["shop.yaml", "fair.yaml", "--from", "2027-04-12", "--hours-a-day", "4h", "--sheet"];

test("--sheet prints the run sheet of a day, kept baths as the day before left them", async () => {
  const { status, out } = await run([...sheet, "2027-04-13"]);
  expect(status).toBe(0);
  expect(out).toContain("Run sheet shop-offer, fair, 2027-04-13");
  expect(out.replace(/\s+/g, " ")).toContain("pour the kept bath in: 4.68 L cold, 103.9 %, 1 d old.");
  const week = JSON.parse((await run([...sheet.slice(0, -1), "--format", "json"])).out);
  const plan = JSON.parse((await run([...sheet, "2027-04-13", "--format", "json"])).out);
  expect(plan.schema).toBe("dipwright/plan@1");
  expect(plan.totals.minutes).toBe(week.days[1].minutes);
});

test("--sheet prints a run sheet for each of two people", async () => {
  const { out } = await run([...sheet, "2027-04-12", "--people", "2"]);
  expect(out.match(/^(Person \d|Run sheet .*)$/gm)).toEqual([
    "Person 1",
    expect.stringMatching("^Run sheet "),
    "Person 2",
    expect.stringMatching("^Run sheet "),
  ]);
  const { plans } = JSON.parse(
    (await run([...sheet, "2027-04-12", "--people", "2", "--format", "json"])).out,
  );
  for (const { assumptions } of plans)
    expect(assumptions).toContainEqual({
      code: "assumed-handling",
      path: ["handling"],
      message: expect.stringMatching(/^handling times .*\(\d+ % of the cost\): time your own with a watch$/),
    });
  const rows = (await run([...sheet, "2027-04-12", "--people", "2", "--format", "csv"])).out;
  expect(rows.match(/^batch,/gm)).toHaveLength(1);
});

test("--sheet has rows of its own", async () => {
  const { status, err } = await run([...sheet, "2027-04-12", "--rows", "baths"]);
  expect(status).toBe(2);
  expect(err).toContain("error[usage]: --rows: a run sheet has rows of its own");
});

test("--sheet of a day without work names those that have some", async () => {
  const { status, out, err } = await run([...sheet, "2027-04-18", "--quiet"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toContain(
    "error[usage]: --sheet: nothing is dyed on 2027-04-18\n  help: write one of 2027-04-12, ",
  );
});

test("the costs of a day's sheet are those that cost gives for the same batch, to the cent", async () => {
  const dyed =
    "orders=[{ part: knob, shade: amber-pale, base: white, quantity: 40 }, { part: bowl, shade: pine-deep, base: white, quantity: 4 }]";
  const sheetOf = ["--from", "2027-04-12", "--sheet", "2027-04-12"];
  const ordersOf = (out: string) =>
    JSON.parse(out).orders.map((order: Record<string, unknown>) => [order.costPerPart, order.price]);
  const day = await run(["shop.yaml", ...sheetOf, "--format", "json", "--set", dyed]);
  const cost = await runFake(["cost", "shop.yaml", "--format", "json", "--set", dyed], folderIo(examples));
  expect(ordersOf(day.out)).toEqual(ordersOf(cost.out));
  expect(ordersOf(day.out)).toEqual(Array(2).fill([expect.any(Number), expect.any(Number)]));
});

test("a bath that starts from the log is as old on each day as the log says", async () => {
  const log = [
    "time,bath,event,dye,part,shade,base,parts,seconds,celsius",
    "2027-04-08T09:00,ten,made-up,amber,,,,,,",
    "2027-04-08T10:00,ten,load,,knob,amber-pale,white,20,26,78",
    "",
  ].join("\r\n");
  const text = `${one("baths:\n  - { tank: ten, dye: amber, start: log }\n")}  - { part: bowl, shade: amber-deep, base: white, quantity: 5 }\n`;
  const files = new Map([
    ["a.yaml", text],
    ["baths.csv", log],
  ]);
  const { status, out } = await run(
    ["a.yaml", ...asked, "--log", "baths.csv", "--format", "csv", "--rows", "baths"],
    files,
  );
  expect(status).toBe(0);
  expect(out).toMatch(/\r\n2027-04-12,ten,amber,kept,[\d.]+,[\d.]+,4\.0,/);
});

test("files that cost otherwise can share a week, but no run sheet, since that has costs", async () => {
  const inBulk = "pricing: { margin: 20 % }\n";
  const alone = (changes: string): string =>
    `batch: alone\ncurrency: EUR\ndyes: { ink: { dilution: 1:9, temperature: 80 °C, rate: 0.01 /s } }\ntanks: { six: { volume: 6 L, heater: 900 W } }\nparts: { tag: { mass: 4 g, area: 28 cm2 } }\nshades: { blue: { dye: ink, time: 60 s } }\nbaths:\n  - { tank: six, dye: ink }\norders:\n  - { part: tag, shade: blue, quantity: 5 }\n${changes}`;
  const files = new Map([
    ["a.yaml", alone("")],
    ["b.yaml", alone(inBulk)],
  ]);
  expect((await run(["a.yaml", "b.yaml", ...asked], files)).status).toBe(0);
  const { status, err } = await run(["a.yaml", "b.yaml", ...asked, "--sheet", "2027-04-12"], files);
  expect(status).toBe(2);
  expect(err).toContain("error[differs]: pricing is not the same here as in a.yaml");
});
