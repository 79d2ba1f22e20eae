import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const run = (...args: string[]) => runFake(args, folderIo(examples));
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((match) => match[1]!);

test("plan prints the page of a mixed bath: each dye to pour, to top up, and on the label", async () => {
  const { status, out, err } = await run("plan", "mixing.yaml");
  expect([status, err]).toEqual([0, ""]);
  await expect(out).toMatchFileSnapshot("golden/plan/mixing.txt");
});

test("a kept mix has one strength on its label where all its dyes have it, else each has its own", async () => {
  const unlike = [
    "baths.1.topUp=none",
    "baths.1.start={ coldVolume: 13 L, strength: { straw: 80 %, rose: 90 %, lagoon: 70 % }, age: 1 d }",
  ];
  const { out } = await run("plan", "mixing.yaml", ...unlike.flatMap((one) => ["--set", one]));
  expect(out.replace(/\s+/g, " ")).toMatch(
    / L cold at straw \d[\d.]+ %, rose \d[\d.]+ %, lagoon \d[\d.]+ %, /,
  );
});

test("commands for one dye offer those that are not mixes", async () => {
  const { err } = await run("swatches", "mixing.yaml");
  expect(err).toContain("write --dye with one of straw, rose, lagoon\n");
});

test("plan --format json has each dye of a mix beside the sum of them", async () => {
  const { baths } = JSON.parse((await run("plan", "mixing.yaml", "--format", "json")).out);
  const [rose, moss] = baths;
  expect(moss.makeUp.mix).toEqual([
    { dye: "straw", concentrateMl: expect.any(Number) },
    { dye: "rose", concentrateMl: expect.any(Number) },
    { dye: "lagoon", concentrateMl: expect.any(Number) },
  ]);
  const sum = (each: readonly { concentrateMl: number }[]): number =>
    each.reduce((all, { concentrateMl }) => all + concentrateMl, 0);
  expect(sum(moss.makeUp.mix)).toBeCloseTo(moss.makeUp.concentrateMl, 9);
  const topped = moss.loads.find(({ topUp }: { topUp: unknown }) => topUp !== null);
  expect(sum(topped.topUp.mix)).toBeCloseTo(topped.topUp.concentrateMl, 9);
  expect(topped.mix[0]).toEqual({
    dye: "straw",
    takenUpMl: expect.any(Number),
    depth: expect.any(Number),
    strengthBefore: expect.any(Number),
    strengthAfter: expect.any(Number),
  });
  expect(moss.carryOver.mix.map(({ dye }: { dye: string }) => dye)).toEqual(["straw", "rose", "lagoon"]);
  expect(rose.makeUp).not.toHaveProperty("mix");
  expect(rose.loads[0]).not.toHaveProperty("mix");
});

test("plan --format csv has what a top-up takes of each dye", async () => {
  const { out } = await run("plan", "mixing.yaml", "--format", "csv");
  expect(out.split("\r\n")[0]).toContain(",top_up_mix,");
  expect(out).toMatch(/,straw [\d.]+ mL; rose [\d.]+ mL; lagoon [\d.]+ mL,/);
  expect((await run("plan", "restock.yaml", "--format", "csv")).out).not.toContain("top_up_mix");
});

test("bath, cost, offer, check, rework and sweep work with a mix", async () => {
  for (const args of [
    ["bath", "mixing.yaml"],
    ["cost", "mixing.yaml"],
    ["offer", "mixing.yaml", "--quantities", "20"],
    ["check", "mixing.yaml"],
    ["rework", "mixing.yaml", "--from", "62,-6,17", "--shade", "moss"],
    ["sweep", "mixing.yaml", "--vary", "dyes.moss.mix.straw=60 mL/L,70 mL/L"],
    ["plan", "mixing.yaml", "--spread", "--draws", "10"],
    ["week", "mixing.yaml", "--from", "2027-04-12"],
  ]) {
    const { status, out, err } = await run(...args);
    expect([args[0], status, codes(err).filter((code) => code !== "no-bath")]).toEqual([args[0], 0, []]);
    expect(out).toContain(["check", "sweep"].includes(args[0]!) ? "" : "moss");
  }
});

test("week says what to order of each dye of a mix, not of the mix", async () => {
  const { out } = await run("week", "mixing.yaml", "--from", "2027-04-12", "--format", "json");
  const { toOrder } = JSON.parse(out);
  const dyes = toOrder.filter(({ kind }: { kind: string }) => kind === "dye");
  expect(dyes.map(({ name }: { name: string }) => name).sort()).toEqual(["lagoon", "rose", "straw"]);
});

test("commands that need the curve of one dye refuse a mix in one way", async () => {
  for (const args of [
    ["shade", "mixing.yaml", "--dye", "moss"],
    ["shade", "mixing.yaml", "--target", "moss"],
    ["swatches", "mixing.yaml", "--dye", "moss"],
    ["blend", "mixing.yaml", "--target", "moss", "--dyes", "moss,rose"],
  ]) {
    const { status, out, err } = await run(...args);
    expect([args.join(" "), status, out, codes(err)]).toEqual([args.join(" "), 2, "", ["mixed-dye"]]);
  }
});

test("three jugs, a colour, two jars: the lines that blend prints plan a bath that gives the colour", async () => {
  const trials = [
    "straw 38.4 mL, rose 19.2 mL, lagoon 10.0 mL, water 432 mL, 60 s: 57.7,1.4,20.3",
    "straw 36.2 mL, rose 12.3 mL, lagoon 13.5 mL, water 438 mL, 60 s: 56.3,-9.5,16.7",
  ].flatMap((trial) => ["--trial", trial]);
  const { out } = await run("blend", "mixing.yaml", "--target", "55,-4,22", "--tank", "fourteen", ...trials);
  const pasted = /^dyes:\n( {2}mixed:\n(?: {4}.*\n)+)shades:\n( {2}mixed: .*)$/m.exec(out)!;
  const jugs = await folderIo(examples).readFile!("mixing.yaml");
  const text = new TextDecoder()
    .decode(jugs)
    .replace(/^ {2}moss: # a mix[\s\S]*?\n\n/m, `${pasted[1]}\n`)
    .replace(/^ {2}moss: \{ dye: moss.*$/m, pasted[2]!)
    .replace("dye: moss,", "dye: mixed,")
    .replace("shade: moss,", "shade: mixed,");
  const planned = await runFake(
    ["plan", "new.yaml", "--format", "json"],
    folderIo(examples, new Map([["new.yaml", text]])),
  );
  expect([planned.status, codes(planned.err)]).toEqual([0, []]);
  const [load] = JSON.parse(planned.out).baths[1].loads;
  // Amounts are printed to four digits; the parts cool the bath and take dye out of it, which takes some seconds more.
  expect(load.deltaE00).toBeLessThan(0.2);
  expect(load.dipSeconds).toBeGreaterThan(60);
  expect(load.dipSeconds).toBeLessThan(65);
});

test("blend reckons with a mixed bath that shares its tank", async () => {
  const { out } = await run(
    "blend",
    "mixing.yaml",
    "--target",
    "55,-4,22",
    "--tank",
    "fourteen",
    "--format",
    "json",
  );
  expect(JSON.parse(out).carryOver.order.toSorted()).toEqual(["moss", "this recipe"]);
});

test("week prints how strong each dye of a kept mix is left", async () => {
  const { out } = await run("week", "mixing.yaml", "--from", "2027-04-12", "--format", "json");
  expect(out).toMatch(/strength: \{ straw: [\d.]+ %, rose: [\d.]+ %, lagoon: [\d.]+ % \}/);
  const starts = JSON.parse(out).baths.map(({ start }: { start: object }) => start);
  expect(starts[1]).toMatchObject({
    kind: "kept",
    mix: [{ dye: "straw" }, { dye: "rose" }, { dye: "lagoon" }],
  });
  expect(starts[1]).not.toHaveProperty("strengthEach");
});

test("record writes each dye of a mix into the note, and review says that it learns nothing of it", async () => {
  const record = async (log: ReadonlyMap<string, string>, ...args: string[]) =>
    runFake(["record", "log.csv", "--from", "mixing.yaml", ...args], folderIo(examples, log));
  const mixed = await record(
    new Map(),
    "--event",
    "made-up",
    "--bath",
    "fourteen",
    "--time",
    "2027-04-12T08:00",
  );
  expect(mixed.files.get("log.csv")).toMatch(/,"mixing: straw [\d.]+ mL, rose [\d.]+ mL, lagoon [\d.]+ mL"/);
  expect([mixed.status, codes(mixed.err)]).toEqual([0, ["log-mix"]]);
  const review = (log: ReadonlyMap<string, string>) =>
    runFake(["review", "mixing.yaml", "--log", "log.csv"], folderIo(examples, log));
  const alone = await review(mixed.files);
  expect([alone.status, codes(alone.err)]).toEqual([2, ["log-mix"]]);
  const rose = await record(mixed.files, "--event", "made-up", "--bath", "six", "--time", "2027-04-12T08:10");
  expect(codes(rose.err)).toEqual([]);
  const both = await review(rose.files);
  expect([both.status, codes(both.err)]).toEqual([0, ["log-mix"]]);
});

test("compare judges a part beside the shade of a mix, without a second dip", async () => {
  const { status, out, err } = await run("compare", "58,-8,18", "moss", "--spec", "mixing.yaml");
  expect([status, err]).toEqual([0, ""]);
  expect(out).toContain("Pass: CIEDE2000");
});
