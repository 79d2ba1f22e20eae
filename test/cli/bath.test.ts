import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const bath = (...args: string[]) => runFake(["bath", ...args], folderIo(examples));
const json = async (...args: string[]) => JSON.parse((await bath(...args, "--format", "json")).out);
const set = (...values: string[]): string[] => values.flatMap((value) => ["--set", value]);
/** What the report says, on one line. */
const said = async (...args: string[]): Promise<string> => {
  const { status, out } = await bath(...args);
  expect(status).toBe(0);
  return out.replace(/\s+/g, " ");
};

const endings = {
  text: "txt",
  json: "json",
  csv: "csv",
  tsv: "tsv",
  markdown: "md",
  html: "html",
  svg: "svg",
};
for (const [format, ending] of Object.entries(endings))
  test(`bath prints the restock example as ${format}, the same bytes every time`, async () => {
    const { status, out } = await bath("restock.yaml", "--format", format);
    expect(status).toBe(0);
    await expect(out).toMatchFileSnapshot(`golden/bath/restock.${ending}`);
    expect((await bath("restock.yaml", "--format", format)).out).toBe(out);
  });

test("bath has the keys that scripts rely on", async () => {
  const report = await json("restock.yaml");
  expect(report).toMatchObject({ schema: "dipwright/bath@1", batch: "autumn-restock", currency: "EUR" });
  expect(report.cautions).toHaveLength(1);
  const number = expect.any(Number);
  for (const one of report.baths) {
    expect(one).toMatchObject({
      tank: expect.any(String),
      dye: expect.any(String),
      steadyTopUp: { fraction: number, mlPerLoad: number },
      dyeFate: { onPartsShare: number, rinsedShare: number, leftShare: number },
      energyBalance: { heaterKwh: number, agitationKwh: number, lostKwh: number, partsKwh: number },
    });
    expect(one.lives.map(({ rule }: { rule: string }) => rule)).toEqual(["none", "level", "strength"]);
    for (const life of one.lives)
      expect(life).toMatchObject({
        loads: number,
        parts: number,
        areaDm2: number,
        concentrateMlPerPart: number,
        concentrateMlPerDm2: number,
        costPerPart: number,
        endedBy: "shelf-life",
      });
    for (const point of one.trace)
      expect(point).toEqual({
        load: number,
        portion: number,
        parts: number,
        strength: number,
        volumeL: number,
        dipSeconds: number,
        celsius: number,
      });
  }
});

test("bath gives one row a bath and rule, with the columns that spreadsheets rely on", async () => {
  const rows: Record<string, string>[] = parse((await bath("restock.yaml", "--format", "csv")).out, {
    columns: true,
  });
  const { baths } = await json("restock.yaml");
  expect(rows).toHaveLength(6);
  expect(Object.keys(rows[0]!).join()).toBe(
    "batch,date,tank,dye,bath_C,volume_L,top_up,own_rule,cheapest,loads,parts,area_dm2,days,ended_by,concentrate_mL_per_part,concentrate_mL_per_dm2,powder_g_per_part,powder_g_per_dm2,cost_per_part_EUR,cost_EUR,on_parts_pct,rinsed_pct,left_pct,rests_on_assumed,cautions",
  );
  expect(rows.map(({ top_up }) => top_up)).toEqual([
    ...["none", "level", "strength"],
    "none",
    "level",
    "strength",
  ]);
  expect(rows.filter(({ own_rule }) => own_rule === "yes").map(({ top_up }) => top_up)).toEqual([
    "strength",
    "level",
  ]);
  const [brick] = baths;
  expect(Number(rows[2]!.loads)).toBe(brick.lives[2].loads);
  expect(Number(rows[2]!.concentrate_mL_per_part)).toBeCloseTo(brick.lives[2].concentrateMlPerPart, 4);
  expect(rows.map(({ cautions }) => cautions !== "")).toEqual([true, false, false, false, false, false]);
});

test("bath fits narrow terminals", async () => {
  for (const columns of [80, 60, 40, 30])
    for (const file of ["restock.yaml", "minimal.yaml"]) {
      const { out } = await runFake(["bath", file], { ...folderIo(examples), columns });
      for (const line of out.split("\n"))
        expect([columns, line, widthOf(line) <= columns]).toEqual([columns, line, true]);
    }
});

test("bath begins with how long a bath lasts, and what ends it", async () => {
  const lasts = (...values: string[]) => said("restock.yaml", ...set(...values));
  expect(await lasts()).toMatch(
    /lasts \d+ loads of this work, \d+ parts, [\d.]+ m2, 60 days; then its shelf life is over\./,
  );
  const once = ["baths.0.every=1 d", "dyes.brick.shelfLife=36525 d"];
  expect(await lasts(...once)).toMatch(
    /is counted to 10000 loads of this work, \d+ parts, [\d.]+ m2: dye alone does not end it; dirt, hardness and breakdown do\./,
  );
  expect(await lasts(...once, "baths.0.topUp=none")).toContain("then too little liquor is left");
  expect(await lasts("handling.longest=1 min")).toContain("then a dip takes longer than the longest");
  expect(await lasts("handling.longest=20 s")).toContain(
    "does not last for one load of this work: a dip takes longer than the longest (handling.longest).",
  );
  expect(await lasts("baths.0.after=dump")).toContain("(if it were kept; this batch dumps it)");
});

test("bath says when a bath grows stronger while it works, and only then", async () => {
  const grows = "water evaporates and dye stays";
  const [brick, teal] = (await said("restock.yaml")).split("teal in tank");
  expect(brick).not.toContain(grows);
  expect(teal).toContain(grows);
});

test("bath calls a rule cheapest where it surely is, else says that none is", async () => {
  const [, sure] = /topUp .*?\n(none.*)\n/.exec((await bath("restock.yaml")).out)!;
  expect(sure).toContain("cheapest");
  const free = await said(
    "restock.yaml",
    ...set("dyes.brick.price=0 /L", "rates.disposal=0 /L", "rates.labour=0 /h", "rates.water=0 /m3"),
  );
  expect(free.split("teal in tank")[0]).toContain("The rules cost the same within");
  const unpriced = await said("minimal.yaml");
  expect(unpriced).not.toMatch(/cheapest|The cost a part/);
});

test("bath says what a heater does not hold, and leaves out what an unknown one would take", async () => {
  const weak = await said("restock.yaml", ...set("tanks.six.heater=420 W"));
  expect(weak).toContain(
    "The heater does not hold the bath at its temperature while parts are dipped (0.1 °C a minute",
  );
  expect(weak).toMatch(/none never/);
  const unknown = await runFake(["bath", "pot.yaml"], folderIo(examples, new Map([["pot.yaml", pot]])));
  expect(unknown.out.replace(/\s+/g, " ")).toContain(
    "The heater's power is not given: heating up is left out",
  );
  expect(unknown.out).not.toContain("heats up in");
});

/** A powder dye in a tank whose heater nobody knows, without prices. */
const pot = `batch: powder
tanks: { pot: { volume: 4 L, surface: 300 cm2 } }
dyes: { ink: { dilution: 20 g/L, temperature: 70 °C, rate: 0.012 /s, uptake: 0.01 g/dm2 } }
parts: { clip: { mass: 3 g, area: 20 cm2 } }
shades: { dark: { dye: ink, time: 60 s } }
baths: [{ tank: pot, dye: ink, topUp: strength }]
orders: [{ part: clip, shade: dark, quantity: 50 }]
handling: { dragOut: 0.8 mL/dm2 }
`;

test("bath gives powder in grams, in its own columns", async () => {
  const io = folderIo(examples, new Map([["pot.yaml", pot]]));
  const { out } = await runFake(["bath", "pot.yaml", "--format", "csv"], io);
  const [row] = parse(out, { columns: true }) as Record<string, string>[];
  expect(Number(row!.powder_g_per_part)).toBeGreaterThan(0);
  expect([row!.concentrate_mL_per_part, row!.cost_per_part]).toEqual(["", ""]);
  const report = JSON.parse((await runFake(["bath", "pot.yaml", "--format", "json"], io)).out);
  expect(report.baths[0].steadyTopUp.gramsPerL).toBeGreaterThan(0);
  expect((await runFake(["bath", "pot.yaml"], io)).out).toMatch(/takes 0\.0\d+ g of powder a part/);
});

const refused: Readonly<Record<string, readonly string[]>> = {
  "error[heater-too-weak]": ["restock.yaml", ...set("tanks.six.heater=150 W")],
  "error[part-too-large]": ["restock.yaml", ...set("parts.hook.mass=400 g")],
  "error[usage]: --format": ["restock.yaml", "--format", "ndjson"],
  "error[read]": ["none.yaml"],
  "error[usage]: missing required argument": [],
  "error[missing-key]": ["dyes.yaml"],
};
for (const [code, args] of Object.entries(refused))
  test(`bath refuses ${code} and writes nothing`, async () => {
    const { status, out, err, files } = await bath(...args, "--out", "wear.txt");
    expect([status, out, files.size]).toEqual([2, "", 0]);
    expect(err).toContain(code);
  });
