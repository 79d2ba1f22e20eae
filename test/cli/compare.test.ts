import fc from "fast-check";
import { expect, test } from "vitest";
import { starter } from "../../src/cli/new/starter.js";
import { compareLab } from "../../src/core/colour/difference/compare-colours.js";
import { widthOf } from "../../src/report/format/wrap.js";
import { runFake } from "./fake-io.js";

const cases: Readonly<Record<string, readonly string[]>> = {
  alike: ["50,-3,2", "50.4,-2.8,2.5"],
  fail: ["50,-3,2", "51.4,-2.8,3.5", "--tolerance", "1.0", "--formula", "cmc21"],
  "carried-over": ["65.9,44.6,23.0", "#d9603b", "--tolerance", "20"],
  screen: ["tomato", "hsl(9, 100%, 60%)"],
  "out-of-gamut": ["53,100,67", "53, 60, 40", "--reading", "D65/2"],
};
const formats = [
  ["text", "txt"],
  ["json", "json"],
  ["csv", "csv"],
  ["tsv", "tsv"],
  ["markdown", "md"],
] as const;

for (const [name, args] of Object.entries(cases))
  test(`compare gives the recorded report for ${name} in every format`, async () => {
    for (const [format, ending] of formats) {
      const { status, out, err } = await runFake(["compare", ...args, "--format", format]);
      expect([status, err]).toEqual([name === "fail" ? 1 : 0, ""]);
      await expect(out).toMatchFileSnapshot(`golden/compare/${name}.${ending}`);
    }
  });

test("compare gives no line wider than a terminal of 60 to 80 columns", async () => {
  for (const args of Object.values(cases))
    for (const columns of [60, 72, undefined]) {
      const { out } = await runFake(["compare", ...args], { columns });
      expect(out.length).toBeGreaterThan(300);
      for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns ?? 80);
    }
});

test("compare gives the core's numbers for any two CIELAB colours", async () => {
  const axis = fc.integer({ min: -600, max: 600 }).map((n) => n / 10);
  const lab = fc.tuple(
    fc.integer({ min: 0, max: 1000 }).map((n) => n / 10),
    axis,
    axis,
  );
  await fc.assert(
    fc.asyncProperty(lab, lab, async (one, other) => {
      const { out } = await runFake(["compare", one.join(), other.join("; "), "--format", "json"]);
      expect(JSON.parse(out)).toMatchObject(JSON.parse(JSON.stringify(compareLab(one, other))));
    }),
    { numRuns: 25 },
  );
});

test("compare shows both colours as blocks side by side where the terminal has every colour", async () => {
  const { out } = await runFake(["compare", "tomato", "#ff6040"], {
    outIsTerminal: true,
    columns: 80,
    env: { COLORTERM: "truecolor" },
  });
  expect(out).toContain(
    "\u001b[48;2;255;99;71m       \u001b[49m   \u001b[48;2;255;96;64m       \u001b[49m\n",
  );
});

test("compare passes a difference equal to the tolerance and returns 1 above it", async () => {
  const status = async (tolerance: string) =>
    (await runFake(["compare", "50,0,0", "52,0,0", "--formula", "cie76", "--tolerance", tolerance])).status;
  expect([await status("2"), await status("1.99"), await status("0")]).toEqual([0, 1, 1]);
});

test("compare refuses what is not a colour, each argument named", async () => {
  const { status, out, err } = await runFake(["compare", "1,2", "101,0,0"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err.match(/^error.*$/gm)).toEqual([
    'error[colour-unknown]: A: "1,2" is not a colour',
    "error[colour-range]: B: L must lie in 0 to 100, not 101",
  ]);
});

test("compare refuses options that do not go together, all in one run", async () => {
  const said = async (...args: string[]) => {
    const { status, out, err } = await runFake(["compare", ...args]);
    expect([args, status, out]).toEqual([args, 2, ""]);
    return err.match(/^error\[\S+\]: (--\S+|[^-].*)(?=: |$)/gm)?.map((line) => line.replace(/^\S+ /, ""));
  };
  expect(await said("tomato")).toEqual(["two colours are compared"]);
  expect(await said("tomato", "coral", "--pairs", "x.csv", "--spec", "b.yaml")).toEqual([
    "--pairs",
    "--spec",
  ]);
  expect(await said("tomato", "coral", "--formula", "cmc21")).toEqual(["--formula"]);
  expect(await said("tomato", "coral", "--tolerance", "-1", "--reading", "D65", "--set", "a=1")).toEqual([
    "--reading",
    "--tolerance",
    "--set",
  ]);
  expect(await said("tomato", "coral", "--fail-fast")).toEqual(["--fail-fast"]);
  expect(await said("tomato", "coral", "--format", "ndjson")).toEqual(["--format"]);
});

const spec = `${starter.replace(
  /dyes:\n/,
  `dyes:
  coral:
    dilution: 1:9
    temperature: 80 °C
    base: cream
    reading: A/10
    swatches:
      - { time: 30 s, lab: [73.5, 33.0, 15.9] }
      - { time: 60 s, lab: [65.9, 44.6, 23.0] }
`,
)}`
  .replace("  white: {}", "  white: {}\n  cream: { lab: [92.1, -0.6, 2.3] }")
  .replace(
    "shades:\n",
    `shades:
  swatch: { dye: coral, swatch: 30 s }
  timed: { dye: coral, time: 60 s }
  read: { dye: coral, lab: [70, 38, 19] }
  shown: { dye: coral, hex: "#d9603b" }
`,
  );
const withSpec = async (...args: string[]) =>
  runFake(["compare", ...args, "--spec", "batch.yaml", "--format", "json"], {
    readFile: async () => Buffer.from(spec),
  });

test("compare takes shades of a batch under the reading of their dye", async () => {
  const { status, out, err } = await withSpec("swatch", "read");
  expect([status, err]).toEqual([0, ""]);
  const report = JSON.parse(out);
  expect(report.reading).toEqual({ illuminant: "A", observer: 10 });
  expect(report.standard).toMatchObject({ given: "swatch", lab: [73.5, 33, 15.9] });
  expect(report.sample).toMatchObject({ given: "read", lab: [70, 38, 19] });
  expect("carriedFrom" in report.standard || "carriedFrom" in report.sample).toBe(false);
});

test("compare takes a shade given as a time as what the time gives in a fresh bath", async () => {
  const { standard } = JSON.parse((await withSpec("timed", "read")).out);
  for (const [i, value] of [65.9, 44.6, 23].entries()) expect(standard.lab[i]).toBeCloseTo(value, 6);
});

test("compare carries a shade over to the reading asked for, and says so", async () => {
  const { reading, standard, sample } = JSON.parse(
    (await withSpec("swatch", "72,30,12", "--reading", "D65/10")).out,
  );
  expect(reading).toEqual({ illuminant: "D65", observer: 10 });
  expect(standard.carriedFrom).toEqual({ illuminant: "A", observer: 10 });
  expect(standard.lab[0]).not.toBe(73.5);
  expect(sample).toEqual({ given: "72,30,12", lab: [72, 30, 12], hex: expect.any(String), inGamut: true });
});

test("compare carries typed CIELAB over to the reading of a shade where none is asked for", async () => {
  const { reading, sample } = JSON.parse((await withSpec("swatch", "72,30,12")).out);
  expect(reading).toEqual({ illuminant: "A", observer: 10 });
  expect(sample.carriedFrom).toEqual({ illuminant: "D65", observer: 10 });
});

test("compare keeps the hex of a shade and of a typed colour", async () => {
  const { standard, sample } = JSON.parse((await withSpec("shown", "tomato", "--reading", "A/10")).out);
  expect([standard.hex, sample.hex]).toEqual(["#d9603b", "#ff6347"]);
});

test("compare says that a dye without swatches tells no colour of a time", async () => {
  const { status, out, err } = await withSpec("moss-light", "tomato");
  expect([status, out]).toEqual([2, ""]);
  expect(err).toContain('shade "moss-light" is given as a time');
});

test("compare reports a bad batch and does not go on", async () => {
  const { status, err } = await runFake(["compare", "a", "b", "--spec", "none.yaml"]);
  expect([status, err]).toEqual([2, "error[read]: none.yaml cannot be read: there is no such file\n"]);
});
