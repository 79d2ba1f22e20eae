import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const bare = `batch: first
bases: { white: { lab: [92.1, -0.6, -2.3] } }
dyes: { moss: { dilution: 1:9, temperature: 80 °C, base: white } }
`;
const swatches = (spec: string, files: Record<string, string>, ...args: string[]) => {
  const io = folderIo(examples);
  return runFake(["swatches", spec, ...args], {
    ...io,
    readFile: (path: string, atMost?: number) =>
      files[path] === undefined
        ? (io.readFile?.(path, atMost) ?? Promise.reject(new Error(path)))
        : Promise.resolve(Buffer.from(files[path])),
  });
};
const json = async (...given: Parameters<typeof swatches>) =>
  JSON.parse((await swatches(given[0], given[1], ...given.slice(2).map(String), "--format", "json")).out);

test("before any swatch: the bare base, four times in equal ratios, the first of them twice", async () => {
  const { dips, gain } = await json("bare.yaml", { "bare.yaml": bare });
  expect(dips.map((dip: { seconds: number }) => dip.seconds)).toEqual([0, 15, 35, 80, 180]);
  expect(dips.map((dip: { copies: number }) => dip.copies)).toEqual([1, 2, 1, 1, 1]);
  expect(gain).toBeNull();
  const { out } = await swatches("bare.yaml", { "bare.yaml": bare }, "--format", "csv");
  expect(out.split(/\r?\n/)[0]).toBe("time_s,strength_pct,bath_C,base,L,a,b");
  expect(out).toContain("15,100,80,white,,,");
});

test("later: the dip that narrows the intervals most, a weakened bath among them, and less for each further one", async () => {
  const first = await json("restock.yaml", {}, "--dye", "brick");
  expect(first.dips).toHaveLength(1);
  expect(first.dips[0].strength).toBe(0.5);
  expect(first.gain).toBeGreaterThan(0.1);
  const more = `dyes.brick.swatches=[${[
    "{ time: 15 s, lab: [63.6, 29.4, 8.1] }",
    "{ time: 30 s, lab: [56.2, 34.0, 10.1] }",
    "{ time: 60 s, lab: [49.2, 36.9, 12.2] }",
    "{ time: 180 s, lab: [41.8, 38.7, 13.9] }",
    "{ time: 155 s, strength: 50 %, lab: [49.6, 36.8, 12.0] }",
  ].join(", ")}]`;
  const then = await json("restock.yaml", {}, "--dye", "brick", "--set", more);
  expect(then.dips.every((dip: { strength: number }) => dip.strength === 1)).toBe(true);
  expect(then.gain).toBeLessThan(first.gain);
});

test("for a dye without shades the next swatch is at the time that improves the constants of its law most", async () => {
  const alone = await json("restock.yaml", {}, "--dye", "brick", "--set", "orders=[]", "--set", "shades={}");
  expect(alone.asked).toEqual([]);
  for (const { strength, seconds } of alone.dips) {
    expect(strength).toBe(1);
    expect(seconds).toBeGreaterThanOrEqual(15);
  }
});

const german = [
  "time_s;strength_pct;bath_C;base;L;a;b;note",
  "0;;;white;92,1;-0,6;-2,3;",
  "15;100;80;white;80,2;21,7;9,8;",
  "60;100;80;white;65,9;44,6;23,0;dry",
  "15;100;80;white;80,6;21,1;9,6;again",
  "60;50;80;white;73,9;32,1;15,5;",
  "60;100;76;white;69,9;39,1;19,5;",
  "90;;;white;;;;",
].join("\r\n");

test("readings come back as lines to paste, repeats averaged, from a table with semicolons and decimal commas", async () => {
  const files = { "bare.yaml": bare, "read.csv": `\ufeff${german}\r\n` };
  const { yaml } = await json("bare.yaml", files, "--from", "read.csv");
  expect(yaml).toBe(`swatches:
  - { time: 0 s, lab: [92.1, -0.6, -2.3] }
  - { time: 15 s, lab: [80.4, 21.4, 9.7] }
  - { time: 60 s, lab: [65.9, 44.6, 23] }
  - { time: 60 s, strength: 50 %, lab: [73.9, 32.1, 15.5] }
  - { time: 60 s, temperature: 76 °C, lab: [69.9, 39.1, 19.5] }
`);
  const spec = `${bare.split("dyes:")[0]}dyes:\n  moss:\n    dilution: 1:9\n    temperature: 80 °C\n    base: white\n${yaml.replace(/^/gm, "    ").trimEnd()}\n`;
  const read = await runFake(["shade", "pasted.yaml", "--format", "json"], {
    ...folderIo(examples),
    readFile: () => Promise.resolve(Buffer.from(spec)),
  });
  expect(JSON.parse(read.out)).toMatchObject({
    strengthExponent: { measured: true },
    activationEnergyKJPerMol: { measured: true },
  });
});

test("faults of readings name their row and column, and nothing is written", async () => {
  const of = (text: string) =>
    swatches("bare.yaml", { "bare.yaml": bare, "read.csv": text }, "--from", "read.csv");
  for (const [text, said] of [
    ["time_s,L,a\n15,80,1\n", "no column b"],
    ["time_s,L,a,b\n15,80,x,1\n", "row 2, column a"],
    ["time_s,L,a,b\n15,180,1,1\n", "between 0 and 100"],
    ["time_s,L,a,b\n15,,,\n", "no row has a colour"],
    ["time_s,L,a,b,strength_pct\n15,80,1,1,2\n", "between 5 and 300 %"],
  ] as const) {
    const { status, out, err } = await of(text);
    expect([status, out]).toEqual([2, ""]);
    expect(err.replace(/\s+/g, " ")).toContain(said);
  }
  const drift = await of("time_s,L,a,b\n15,80,20,9\n60,65,44,23\n15,77,24,11\n");
  expect([drift.status, drift.err.replace(/\s+/g, " ")]).toEqual([
    0,
    expect.stringContaining("swatch-drift"),
  ]);
});
