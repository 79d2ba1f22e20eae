import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const plan = (...args: string[]) => runFake(["plan", ...args], folderIo(examples));
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((match) => match[1]!);

for (const format of ["text", "json", "csv", "tsv", "markdown"])
  test(`plan prints the restock example as ${format}, the same bytes every time`, async () => {
    const { status, out } = await plan("restock.yaml", "--format", format);
    expect(status).toBe(0);
    await expect(out).toMatchFileSnapshot(`golden/plan/restock.${format === "text" ? "txt" : format}`);
    expect((await plan("restock.yaml", "--format", format)).out).toBe(out);
  });

test("plan has the keys that scripts rely on", async () => {
  const report = JSON.parse((await plan("restock.yaml", "--format", "json")).out);
  expect(report.schema).toBe("dipwright/plan@1");
  const bath = report.baths[0];
  expect(Object.keys(bath)).toEqual(
    expect.arrayContaining([
      "tank",
      "dye",
      "makeUp",
      "startTopUp",
      "heating",
      "loads",
      "rinse",
      "coolMinutes",
      "carryOver",
      "dyeBalance",
      "energyBalance",
      "life",
    ]),
  );
  expect(Object.keys(bath.makeUp)).toEqual(
    expect.arrayContaining(["fraction", "volumeHotL", "volumeColdL", "concentrateMl", "waterMl"]),
  );
  expect(Object.keys(bath.heating)).toEqual(
    expect.arrayContaining(["minutes", "kWh", "holdingW", "evaporationKgPerH"]),
  );
  expect(Object.keys(bath.loads[0])).toEqual(
    expect.arrayContaining([
      "load",
      "order",
      "part",
      "shade",
      "base",
      "parts",
      "areaDm2",
      "depth",
      "dipSeconds",
      "windowSeconds",
      "deltaE00",
      "slopePerSecond",
      "waitSeconds",
      "celsiusBefore",
      "celsiusAfter",
      "strengthBefore",
      "strengthAfter",
      "volumeBeforeL",
      "volumeAfterL",
      "topUp",
    ]),
  );
  expect(Object.keys(bath.dyeBalance)).toEqual([
    "startMl",
    "addedMl",
    "takenUpMl",
    "draggedOutMl",
    "leftMl",
    "restsOnAssumed",
  ]);
  expect(Object.keys(bath.energyBalance)).toEqual([
    "heaterKwh",
    "agitationKwh",
    "lostKwh",
    "bathKwh",
    "partsKwh",
    "topUpKwh",
  ]);
  expect(Object.keys(bath.rinse)).toEqual(expect.arrayContaining(["litres", "looseShare", "dyeMl"]));
  expect(Object.keys(bath.carryOver)).toEqual(
    expect.arrayContaining(["coldVolumeL", "volumeL", "strength", "ageDays", "areaDm2", "start"]),
  );
  expect(Object.keys(bath.life)).toEqual(
    expect.arrayContaining([
      "rule",
      "loads",
      "parts",
      "areaDm2",
      "concentrateMlPerPart",
      "concentrateMlPerDm2",
      "endedBy",
    ]),
  );
  expect(Object.keys(report.timeline[0])).toEqual(
    expect.arrayContaining(["startMinute", "endMinute", "what"]),
  );
  expect(Object.keys(report.orders[0])).toEqual(
    expect.arrayContaining([
      "order",
      "part",
      "shade",
      "base",
      "quantity",
      "started",
      "costPerPart",
      "total",
      "lines",
      "price",
    ]),
  );
  expect(Object.keys(report.orders[0].lines)).toEqual([
    "blank",
    "dye",
    "water",
    "energy",
    "labour",
    "consumables",
    "equipment",
    "disposal",
  ]);
  expect(report.totals).toMatchObject({ cost: expect.any(Number), good: 245, minutes: expect.any(Number) });
  expect(report.cautions.length).toBeGreaterThan(4);
});

for (const columns of [60, 80])
  test(`plan keeps every line of every example within ${columns} columns`, async () => {
    for (const file of ["minimal.yaml", "restock.yaml", "warnings.yaml"]) {
      const { out } = await runFake(["plan", file], {
        ...folderIo(examples),
        columns,
        outIsTerminal: true,
        env: { NO_COLOR: "1" },
      });
      // What is to be pasted is not broken.
      for (const line of out.split("\n").filter((one) => !one.startsWith("start: ")))
        expect(widthOf(line)).toBeLessThanOrEqual(columns);
    }
  });

test("plan of the minimal example has no costs and says so", async () => {
  const { status, out } = await plan("minimal.yaml");
  expect(status).toBe(0);
  expect(out).toContain("no costs");
  expect(out).not.toContain("Costs in");
});

const impossible: Readonly<Record<string, readonly string[]>> = {
  "heater-too-weak": ["--set", "tanks.six.heater=150 W"],
  "part-too-large": ["--set", "parts.hook.mass=400 g"],
  "too-little-dye": [
    "--set",
    "baths.0.start={ volume: 5.9 L, strength: 0.01 % }",
    "--set",
    "baths.0.topUp=none",
  ],
  "price-shares": ["--set", "pricing.margin=96 %"],
};
for (const [code, args] of Object.entries(impossible))
  test(`plan refuses ${code}, places it, says a way out and writes nothing`, async () => {
    const { status, out, err, files } = await plan("restock.yaml", ...args, "--out", "sheet.txt");
    expect([status, out, files.size]).toEqual([2, "", 0]);
    expect(codes(err)).toContain(code);
    await expect(err).toMatchFileSnapshot(`golden/plan/refused-${code}.txt`);
  });

test("plan --out writes the sheet to the file and nothing to stdout", async () => {
  const { status, out, files } = await plan("minimal.yaml", "--out", "sheet.txt");
  expect([status, out, [...files.keys()]]).toEqual([0, "", ["sheet.txt"]]);
});

test("cost gives one row an order with the columns that spreadsheets rely on", async () => {
  const { status, out } = await runFake(["cost", "restock.yaml", "--format", "csv"], folderIo(examples));
  expect(status).toBe(0);
  const [header, ...rows] = out.trim().split("\r\n");
  expect(header).toBe(
    "batch,date,order,part,shade,base,quantity,started,cost_per_part_EUR,total_EUR,blank_EUR,dye_EUR,water_EUR,energy_EUR,labour_EUR,consumables_EUR,equipment_EUR,disposal_EUR,price_EUR",
  );
  expect(rows).toHaveLength(4);
  await expect(out).toMatchFileSnapshot("golden/plan/restock-cost.csv");
});

test("cost goes on after a bad file with status 2, and refuses to mix currencies", async () => {
  const good = readFileSync(`${examples}/minimal.yaml`, "utf8");
  const priced = (currency: string) => `${good}\nrates: { labour: 30.00 /h }\ncurrency: ${currency}\n`;
  const files = new Map([
    ["bad.yaml", "batch: x\ntanks: 3\n"],
    ["eur.yaml", priced("EUR")],
    ["chf.yaml", priced("CHF")],
  ]);
  const some = await runFake(["cost", "bad.yaml", "eur.yaml", "--format", "csv"], folderIo(examples, files));
  expect(some.status).toBe(2);
  expect(some.out.split("\r\n")).toHaveLength(3);
  const mixed = await runFake(["cost", "eur.yaml", "chf.yaml"], folderIo(examples, files));
  expect([mixed.status, mixed.out, codes(mixed.err)]).toEqual([2, "", ["mixed-currencies"]]);
});
