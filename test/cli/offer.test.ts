import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const run = (...args: string[]) => runFake(args, folderIo(examples));
const offer = ["offer", "shop.yaml", "--quantities", "1,20"];

for (const format of ["text", "json", "csv", "markdown"])
  test(`offer prints colours, prices and what pays as ${format}`, async () => {
    const quantities = format === "text" ? "1,20" : "20";
    const asked = ["--quantities", quantities, "--sales", "12/month", "--format", format];
    const { status, out, err } = await run("offer", "shop.yaml", ...asked);
    expect([status, err]).toEqual([0, ""]);
    await expect(out).toMatchFileSnapshot(`golden/offer/shop.${format === "text" ? "txt" : format}`);
  });

test("offer has the keys that scripts rely on", async () => {
  const report = JSON.parse((await run(...offer, "--format", "json")).out);
  expect(report.schema).toBe("dipwright/offer@1");
  expect(report.rows[4]).toMatchObject({
    part: "knob",
    shade: "amber-pale",
    base: "white",
    quantity: 1,
    costPerPart: expect.any(Number),
    price: expect.any(Number),
    profitPerHour: expect.any(Number),
    handsOnMinutes: expect.any(Number),
    concentrateMlPerPart: expect.any(Number),
  });
  expect(report.colours[0]).toMatchObject({
    dye: "amber",
    seconds: expect.any(Number),
    lab: [expect.any(Number), expect.any(Number), expect.any(Number)],
    hex: expect.stringMatching(/^#[0-9a-f]{6}$/),
  });
});

test("the price list has one row a part, colour, base and quantity, with the prices that cost gives for the same batch", async () => {
  const rows = (text: string): Record<string, string>[] => {
    const [head, ...lines] = text.trim().split(/\r?\n/);
    const keys = head!.split(",");
    return lines.map((line) => Object.fromEntries(line.split(",").map((cell, i) => [keys[i]!, cell])));
  };
  const list = rows((await run(...offer, "--format", "csv")).out);
  const names = list.map((row) => [row.part, row.shade, row.base, row.quantity].join(" "));
  expect(new Set(names).size).toBe(names.length);
  const asked = list.filter(({ shade }) => ["none", "amber-pale", "pine-mid"].includes(shade!));
  for (const row of asked.filter((_, i) => i % 8 === 3))
    for (const after of ["keep", "dump"]) {
      if (row.shade === "none" && after === "dump") continue;
      const dye = row.shade === "pine-mid" ? "pine" : "amber";
      const tank = dye === "pine" ? "ten" : "five";
      const { out } = await run(
        "cost",
        "shop.yaml",
        "--set",
        `baths=[{ tank: ${tank}, dye: ${dye}, topUp: strength, every: 7 d, after: ${after} }]`,
        "--set",
        `orders=[{ part: ${row.part}, shade: ${row.shade}, base: ${row.base}, quantity: ${row.quantity} }]`,
        "--format",
        "csv",
      );
      const [cost] = rows(out);
      expect([row.part, row.shade, row.base, row.quantity, after, cost!.price_EUR]).toEqual([
        row.part,
        row.shade,
        row.base,
        row.quantity,
        after,
        after === "keep" ? row.price_EUR : row.price_fresh_bath_EUR,
      ]);
      expect(cost!.cost_per_part_EUR).toBe(
        after === "keep" ? row.cost_per_part_EUR : row.cost_per_part_fresh_bath_EUR,
      );
    }
});

test("the colours found can be pasted and planned", async () => {
  const { out } = await run("offer", "shop.yaml", "--quantities", "1", "--format", "markdown");
  const lines = out.slice(out.indexOf("shades:")).split("```")[0]!.trim().split("\n").slice(1);
  expect(lines.length).toBeGreaterThan(5);
  const shades = lines
    .map((line) => line.replace(/ *#.*$/, "").trim())
    .filter((line) => line !== "")
    .join(", ");
  const name = lines[0]!.trim().split(":")[0]!;
  const { status, err } = await run(
    "plan",
    "shop.yaml",
    "--set",
    `shades={ ${shades} }`,
    "--set",
    `orders=[{ part: knob, shade: ${name}, base: white, quantity: 4 }]`,
    "--quiet",
  );
  expect([status, err]).toEqual([0, ""]);
});

test("a dye without shades is priced in the colours found for it", async () => {
  const { out } = await run(
    "offer",
    "shop.yaml",
    "--quantities",
    "5",
    "--set",
    "orders=[]",
    "--set",
    "shades={}",
    "--format",
    "json",
  );
  const report = JSON.parse(out);
  const shades = new Set(report.rows.map(({ shade }: { shade: string }) => shade));
  const own = report.colours.filter(({ estimated }: { estimated: boolean }) => !estimated);
  expect(shades).toEqual(new Set(["none", ...own.map(({ name }: { name: string }) => name)]));
});

test.each([
  ["a quantity of nothing", ["--quantities", "0,5"], "--quantities"],
  ["too many quantities", ["--quantities", "1,2,3,4,5,6,7,8,9"], "up to 8"],
  [
    "a list quantity that is not listed",
    ["--quantities", "1,5", "--list-quantity", "7"],
    "write one of 1, 5",
  ],
  ["sales without a time", ["--sales", "12"], "write 12/month"],
  ["sales of nothing", ["--sales", "0/month"], "write 12/month"],
  ["more hours than a week has", ["--hours", "200 h"], "up to 168 h"],
  ["hours without a unit", ["--hours", "30"], "help: write 30 h"],
  ["a tolerance of nothing", ["--tolerance", "0"], "--tolerance"],
  ["a jug for nothing that is a number", ["--jug", "ten"], "--jug"],
])("offer refuses %s and says what to write", async (_, args, said) => {
  const { status, out, err } = await run("offer", "shop.yaml", ...args);
  expect([status, out]).toEqual([2, ""]);
  expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(err).not.toContain("    at ");
});

test("a base given as hex is taken under the dye's reading, as cost takes it", async () => {
  const text = `batch: lamp-light
include: shop-floor.yaml
bases:
  smoke: { hex: "#8f8a80" }
dyes:
  ember:
    price: 41.00 /L
    dilution: 1:9
    temperature: 78 °C
    base: white
    reading: A/2
    swatches:
      - { time: 15 s, lab: [82.1, 10.4, 31.0] }
      - { time: 40 s, lab: [75.4, 18.9, 46.2] }
      - { time: 100 s, lab: [68.8, 26.8, 55.4] }
parts:
  cap: { mass: 5 g, area: 30 cm2, blank: { smoke: 1.10 } }
shades:
  glow: { dye: ember, lab: [50.0, 14.0, 30.0], tolerance: 20 }
baths:
  - { tank: five, dye: ember, every: 7 d }
orders:
  - { part: cap, shade: glow, base: smoke, quantity: 20 }
`;
  const io = folderIo(examples, new Map([["lamp.yaml", text]]));
  const asked = async (command: string, ...more: readonly string[]) =>
    JSON.parse((await runFake([command, "lamp.yaml", "--format", "json", ...more], io)).out);
  const { rows } = await asked("offer", "--quantities", "20");
  const row = rows.find((one: Record<string, unknown>) => one.part === "cap" && one.shade === "glow");
  const [order] = (await asked("cost")).orders;
  expect(row.costPerPart).toBe(order.costPerPart);
  // Under the standard reading the same order would cost otherwise.
  const [other] = (await asked("cost", "--set", "dyes.ember.reading=D65/10")).orders;
  expect(other.costPerPart).not.toBe(order.costPerPart);
});
