import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { colourReport, spectrumReport } from "../../src/core/colour/colour-report.js";
import { widthOf } from "../../src/report/format/wrap.js";
import { runFake } from "./fake-io.js";

const formats = [
  ["text", "txt"],
  ["json", "json"],
  ["csv", "csv"],
  ["tsv", "tsv"],
  ["markdown", "md"],
] as const;
const cases: Readonly<Record<string, readonly string[]>> = {
  lab: ["65.9,44.6,23.0"],
  white: ["97,-0.2,-1.5"],
  "hex-under-a": ["#d9603b", "--illuminant", "A", "--observer", "10"],
  "lab-carried": ["50,20,-30", "--reading", "D50/2", "--illuminant", "D65"],
  vivid: ["50,100,-100", "--reading", "D65/2"],
  black: ["black"],
};

for (const [name, args] of Object.entries(cases))
  test(`colour gives the recorded report for ${name} in every format`, async () => {
    for (const [format, ending] of formats) {
      const { status, out, err } = await runFake(["colour", ...args, "--format", format]);
      expect([status, err]).toEqual([0, ""]);
      await expect(out).toMatchFileSnapshot(`golden/colour/${name}.${ending}`);
    }
  });

test("colour gives no line wider than a terminal of 60 to 80 columns", async () => {
  for (const args of Object.values(cases))
    for (const columns of [60, undefined]) {
      const { out } = await runFake(["colour", ...args], { columns });
      expect(out.length).toBeGreaterThan(150);
      for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns ?? 80);
    }
});

test("colour gives the core's report of a colour under what it was read under", async () => {
  const json = async (...args: string[]) =>
    JSON.parse((await runFake(["colour", ...args, "--format", "json"])).out);
  const core = (colour: Parameters<typeof colourReport>[0], reading: Parameters<typeof colourReport>[1]) => {
    const report = colourReport(colour, reading);
    if (!report.ok) throw new Error("no report");
    return report.value;
  };
  expect(await json("50,20,-30")).toEqual({
    schema: "dipwright/colour@1",
    given: "50,20,-30",
    ...core({ kind: "lab", lab: [50, 20, -30] }, { illuminant: "D65", observer: 10 }),
  });
  expect(await json("tomato")).toEqual({
    schema: "dipwright/colour@1",
    given: "tomato",
    ...core({ kind: "hex", hex: "#ff6347" }, { illuminant: "D65", observer: 2 }),
  });
});

test("colour carries a colour to the illuminant and observer asked for, and says from where", async () => {
  const { out } = await runFake(["colour", "50,0,0", "--illuminant", "f11", "--format", "json"]);
  const { reading, carriedFrom, lab } = JSON.parse(out);
  expect([reading, carriedFrom]).toEqual([
    { illuminant: "F11", observer: 10 },
    { illuminant: "D65", observer: 10 },
  ]);
  expect(lab[0]).toBeCloseTo(50, 6);
  expect(Math.hypot(lab[1], lab[2])).toBeLessThan(1e-6);
});

test("colour refuses a colour that no surface can have where it must be carried over", async () => {
  const { status, out, err } = await runFake(["colour", "50,150,0", "--illuminant", "A"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toMatch(/^error\[colour-outside-limits\]: A: L 50, a 150, b 0 under D65\/10/);
});

test("colour refuses options that do not go together, all in one run", async () => {
  const { status, err } = await runFake([
    "colour",
    "tomato",
    "--reflectance",
    "c.csv",
    "--reading",
    "X/2",
    "--illuminant",
    "C",
    "--observer",
    "5",
  ]);
  expect(status).toBe(2);
  expect(err.match(/^error\[\S+\]: --[a-z]+/gm)?.map((line) => line.split(" ")[1])).toEqual([
    "--reading",
    "--illuminant",
    "--observer",
    "--reflectance",
    "--reading",
  ]);
  for (const args of [[], ["tomato", "--format", "ndjson"], ["tomato", "--set", "a=1"]])
    expect((await runFake(["colour", ...args])).status).toBe(2);
});

const wavelengths = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
const rising = (nm: number): number => Number((0.1 + ((nm - 400) / 300) * 0.7).toFixed(3));
const file = `wavelength_nm,grey,"rising, strong"\n${wavelengths.map((nm) => `${nm},0.5,${rising(nm)}\n`).join("")}`;
const curves = (text: string, ...args: readonly string[]) =>
  runFake(["colour", "--reflectance", "curves.csv", ...args], { readFile: async () => Buffer.from(text) });

for (const [format, ending] of [...formats, ["ndjson", "ndjson"]] as const)
  test(`colour --reflectance gives the recorded ${format} of a file`, async () => {
    const { status, out, err } = await curves(file, "--format", format);
    expect([status, err]).toEqual([0, ""]);
    await expect(out).toMatchFileSnapshot(`golden/colour/curves.${ending}`);
  });

test("colour --reflectance gives the core's report of every curve, under what is asked for", async () => {
  const { out } = await curves(file, "--format", "ndjson", "--illuminant", "LED-B3", "--observer", "2");
  const report = spectrumReport(
    { firstNm: 400, stepNm: 10, reflectance: wavelengths.map(rising) },
    { illuminant: "LED-B3", observer: 2 },
  );
  const [, second] = out.split("\n");
  expect(JSON.parse(second!)).toEqual({ name: "rising, strong", ...(report.ok ? report.value : {}) });
});

test("colour --reflectance reads decimal commas and semicolons", async () => {
  const commas = file.replace('"rising, strong"', "rising").replaceAll(",", ";").replaceAll(".", ",");
  const points = file.replace('"rising, strong"', "rising");
  const wanted = await curves(points, "--format", "csv");
  const got = await curves(commas, "--format", "csv");
  expect([got.status, got.out]).toEqual([0, wanted.out]);
});

test("colour --reflectance says which samples are bad, reports the others, and returns 2", async () => {
  const text = `wavelength_nm,good,high,short\n${wavelengths
    .map((nm, i) => `${nm},0.5,${i === 3 ? "50" : "0.5"}${i < 30 ? ",0.4" : ""}\n`)
    .join("")}`;
  for (const format of ["csv", "json", "text", "ndjson"]) {
    const { status, out, err } = await curves(text, "--format", format);
    expect(status).toBe(2);
    expect(err.replace(/\n {3,}/g, " ").match(/^error.*$/gm)).toEqual([
      "error[reflectance-percent]: curves.csv: row 5, column high: reflectance 50 looks like percent",
      "error[csv-row-short]: curves.csv: row 32: the row ends before column short",
    ]);
    expect(out).toContain("good");
  }
  const rows = parse((await curves(text, "--format", "csv")).out, { columns: true }) as { sample: string }[];
  expect(rows.map(({ sample }) => sample)).toEqual(["good"]);
});

test("colour --reflectance writes nothing where no curve can be read", async () => {
  for (const [text, said] of [
    ["", "there is no header row"],
    ["length,a\n400,0.5\n", "there is no column wavelength_nm"],
    ["wavelength_nm,a\n400,0.5\n410,0.5\n", "column a spans 400 to 410 nm"],
    ["wavelength_nm,a\n410,0.5\n400,0.5\n", "400 nm comes after 410 nm"],
    ['wavelength_nm,a\n400,"0.5\n', "a quote is not closed"],
  ] as const) {
    const { status, out, err } = await curves(text, "--format", "csv");
    expect([status, out]).toEqual([2, ""]);
    expect(err.replace(/\n +/g, " ")).toContain(said);
  }
});
