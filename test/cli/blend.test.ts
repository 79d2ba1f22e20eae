import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const run = (...args: string[]) => runFake(["blend", ...args], folderIo(examples));
// As before its first trial.
const moss = ["mixing.yaml", "--target", "moss", "--set", "dyes.moss.trials=[]"];
const tried = ["mixing.yaml", "--target", "moss"];
const json = async (...args: string[]) => JSON.parse((await run(...args, "--format", "json")).out);
const firstTrial = "straw 38.4 mL, rose 19.2 mL, lagoon 10.0 mL, water 432 mL, 60 s: 57.7,1.4,20.3";
const secondTrial = "straw 36.2 mL, rose 12.3 mL, lagoon 13.5 mL, water 438 mL, 60 s: 56.3,-9.5,16.7";
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((match) => match[1]!);

for (const format of ["text", "json", "csv", "markdown"])
  test(`blend prints recipes as ${format}`, async () => {
    const { status, out, err } = await run(...moss, "--tank", "six", "--format", format);
    expect([status, err]).toEqual([0, ""]);
    await expect(out).toMatchFileSnapshot(`golden/blend/moss.${format === "text" ? "txt" : format}`);
  });

test("blend prints the recipe that two trials correct, and what to add to the bath", async () => {
  const { status, out } = await run(
    ...[...moss, "--tank", "six", "--trial", firstTrial, "--trial", secondTrial],
  );
  expect(status).toBe(0);
  await expect(out).toMatchFileSnapshot("golden/blend/moss-tried.txt");
});

test("blend has the keys that scripts rely on", async () => {
  const report = await json(...moss, "--tank", "six");
  expect(report.schema).toBe("dipwright/blend@1");
  expect(report.recipes[0]).toMatchObject({
    dyes: [
      { dye: "straw", concentrateMl: expect.any(Number) },
      { dye: "rose", concentrateMl: expect.any(Number) },
      { dye: "lagoon", concentrateMl: expect.any(Number) },
    ],
    waterMl: expect.any(Number),
    seconds: 60,
    lab: [expect.any(Number), expect.any(Number), expect.any(Number)],
    deltaE00: expect.any(Number),
    deltaE00ByIlluminant: null,
    costPerL: expect.any(Number),
    doubt95: expect.any(Number),
    changePer2Percent: [expect.any(Number), expect.any(Number), expect.any(Number)],
  });
  expect(report.addition).toBeNull();
  expect(report.nearest).toBeLessThan(0.1);
  const tried = await json(...moss, "--trial", firstTrial);
  expect(tried.addition).toMatchObject({
    dyes: expect.any(Array),
    waterMl: expect.any(Number),
    deltaE00: expect.any(Number),
    makeAfresh: false,
  });
});

test("a recipe for a tank and for its cold volume in a jar is the same by share", async () => {
  const { recipes } = await json(...moss, "--tank", "six");
  const [{ dyes, waterMl, coldMl, jar }] = recipes;
  expect(coldMl).toBeCloseTo(6000 * 0.97336, -1);
  expect(waterMl / coldMl).toBeCloseTo(jar.waterMl / 500, 9);
  expect(dyes[0].concentrateMl / coldMl).toBeCloseTo(jar.dyes[0].concentrateMl / 500, 9);
  const half = (await json(...moss, "--volume", "3 L")).recipes[0];
  expect(half.waterMl).toBeCloseTo(waterMl / 2, 6);
});

test("--dyes and --time narrow what is mixed", async () => {
  const { recipes } = await json(...moss, "--dyes", "straw,lagoon", "--time", "90 s");
  for (const { dyes, seconds } of recipes) {
    expect(seconds).toBe(90);
    expect(dyes.map(({ dye }: { dye: string }) => dye)).not.toContain("rose");
  }
});

test("a colour out of reach is said with how far and in which way, and gives status 1", async () => {
  const { status, out, err } = await run("mixing.yaml", "--target", "52,62,25");
  expect(status).toBe(1);
  expect(out).toMatch(/Nearest \d+\.\d away, too dull/);
  expect(codes(err)).toEqual(["colour-out-of-reach"]);
});

test("dyes of unlike temperatures are mixed with a warning, those of one without", async () => {
  const { err } = await run("restock.yaml", "--target", "48,10,-15");
  expect(codes(err)).toContain("unlike-temperatures");
  expect(err).toContain("brick at 80 °C, teal at 82 °C");
  expect((await run(...moss)).err).toBe("");
});

test("the colour of the bare base has no recipe, which is said", async () => {
  const { status, out, err } = await run("mixing.yaml", "--target", "94.4,-0.8,1.2");
  expect(status).toBe(1);
  expect(out).toMatch(/^No recipe for/);
  expect(codes(err)).toEqual(["no-recipe"]);
});

test("two dips are offered for a dark colour that they come nearer to than one bath", async () => {
  const { out } = await run("mixing.yaml", "--target", "39,22,-38");
  expect(out).toMatch(/First .+ in \w+, rinse, then .+ in \w+/);
  expect((await run(...moss)).out).not.toContain("Two dips");
});

test("a grey base is shown beside the white one, as an estimate", async () => {
  const { onBases } = await json(...moss, "--base", "white");
  expect(
    onBases.map(({ base, estimated }: { base: string; estimated: boolean }) => [base, estimated]),
  ).toEqual([
    ["white", true],
    ["grey", true],
    ["natural", false],
  ]);
});

test.each([
  ["nothing to mix", ["mixing.yaml"], "usage", "--target is needed"],
  ["an unknown dye", [...moss, "--dyes", "strow"], "undefined-name", "did you mean straw?"],
  ["an unknown tank", [...moss, "--tank", "sixx"], "undefined-name", "did you mean six?"],
  ["an unknown base", [...moss, "--base", "beige"], "undefined-name", "--base"],
  [
    "a tank and a volume",
    [...moss, "--tank", "six", "--volume", "3L"],
    "usage",
    "--tank cannot be used with",
  ],
  ["no time", [...moss, "--time", "0 s"], "range", "more than 0 s"],
  ["a trial without a colour", [...moss, "--trial", "straw 12 mL, water 400 mL"], "trial-form", "no colour"],
  ["a trial without water", [...moss, "--trial", "straw 12 mL, 60 s: 60,1,2"], "trial-form", "no water"],
  ["a trial without dye", [...moss, "--trial", "water 400 mL, 60 s: 60,1,2"], "trial-form", "names no dye"],
  [
    "a trial without a unit",
    [...moss, "--trial", "straw 12, water 400 mL: 60,1,2"],
    "trial-form",
    "no amount with a unit",
  ],
  [
    "a decimal comma in a trial",
    [...moss, "--trial", "straw 38,4 mL, rose 19,2 mL, water 432 mL, 60 s: 57.7,1.4,20.3"],
    "trial-form",
    'the number "38,4" contains a comma help: decimals have a point: 38.4',
  ],
  [
    "a dye twice",
    [...moss, "--trial", "straw 1 mL, straw 2 mL, water 400 mL: 60,1,2"],
    "trial-form",
    "given twice",
  ],
  [
    "two times",
    [...moss, "--trial", "straw 1 mL, 60 s, 50 s, water 400 mL: 60,1,2"],
    "trial-form",
    "a second time",
  ],
  [
    "an unknown dye in a trial",
    [...moss, "--trial", "straww 1 mL, water 400 mL: 60,1,2"],
    "undefined-name",
    "did you mean straw?",
  ],
  ["a trial in a wrong unit", [...moss, "--trial", "straw 1 kg, water 400 mL: 60,1,2"], "unit", "straw"],
  [
    "a negative amount in a trial",
    [...moss, "--trial", "straw -1 mL, water 400 mL: 60,1,2"],
    "negative",
    "a volume cannot be negative",
  ],
  [
    "a trial that is stronger than colours are known",
    [...moss, "--trial", "straw 10 mL, rose 20 mL, water 66 mL: 60,1,2"],
    "mix-strength",
    "the bath has 2.1 times as much rose as a fresh bath of it alone",
  ],
  ["half a colour", [...moss, "--trial", "straw 1 mL, water 400 mL: 60,1"], "colour", "60,1"],
])("blend refuses %s and says what to write", async (_, args, code, said) => {
  const { status, out, err } = await run(...args);
  expect([status, out]).toEqual([2, ""]);
  expect(codes(err)[0]).toContain(code);
  if (said !== "straw") expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(err).not.toContain("    at ");
});

test("a dye without two swatches is left out with a warning, and refused where it is named", async () => {
  const one = "dyes.rose.swatches=[{ time: 60 s, lab: [65.2, 46.5, -8.3] }]";
  const { status, out, err } = await run(...moss, "--set", one);
  expect([status === 2, codes(err)[0]]).toEqual([false, "mix-without-curve"]);
  expect(out).not.toContain("rose 1");
  const named = await run(...moss, "--set", one, "--dyes", "straw,rose");
  expect([named.status, codes(named.err)]).toEqual([2, ["mix-without-curve"]]);
});

test("a trial of the strongest recipe is read, though its amounts are rounded", async () => {
  const { status, err } = await run(...moss, "--trial", "rose 101 mL, water 399 mL: 58,45,-8");
  expect(err).not.toContain("mix-strength");
  expect(status).toBeLessThan(2);
});

test("a reading far from what the swatches predict is a warning that says both", async () => {
  const typo = firstTrial.replace("57.7,1.4", "17.7,1.4");
  const { err } = await run(...moss, "--trial", firstTrial, "--trial", typo);
  expect(codes(err)).toContain("trial-unlikely");
  expect(err.replace(/\s+/g, " ")).toMatch(
    /17\.7,1\.4,20\.3" is \d+\.\d CIEDE2000 from what the swatches predict of it, \d+\.\d,/,
  );
  expect(err.match(/trial-unlikely/g)).toHaveLength(1);
});

test("a colour that a longer dip would come nearer to says so, others do not", async () => {
  const short = await run(...moss, "--time", "1 s");
  expect(short.err).toContain("take a longer --time");
  expect(short.out).toContain("these dyes do not reach the colour in 1 s.");
  expect((await run("mixing.yaml", "--target", "90,-20,5")).err).not.toContain("--time");
});

test("an addition says what it makes together, and how far off that is where it is not met", async () => {
  const { out } = await run(...moss, "--trial", firstTrial);
  expect(out.replace(/\s+/g, " ")).toMatch(
    /that makes \d+ mL\. By the arithmetic the colour is then (met|\d)/,
  );
});

test("a dip longer than the longest swatch is extrapolated, which is said", async () => {
  const said = async (time: string) => codes((await run(...moss, "--time", time)).err);
  expect(await said("180 s")).not.toContain("time-beyond-swatches");
  expect(await said("181 s")).toContain("time-beyond-swatches");
});

test("a recipe goes on from the trials of its mix in the batch file, as from typed ones", async () => {
  const own = await json(...tried);
  const typed = await json(...moss, "--trial", firstTrial, "--trial", secondTrial);
  expect(own.recipes).toHaveLength(1);
  own.recipes[0].dyes.forEach(({ dye, concentrateMl }: { dye: string; concentrateMl: number }, i: number) => {
    expect(dye).toBe(typed.recipes[0].dyes[i].dye);
    // The file has amounts for a litre, rounded otherwise.
    expect(concentrateMl / typed.recipes[0].dyes[i].concentrateMl).toBeCloseTo(1, 2);
  });
  // How much of the last bath there is, only a typed trial says.
  expect([own.addition === null, typed.addition === null]).toEqual([true, false]);
  const said = "It goes on from the 2 trials of moss in the batch file.";
  expect((await run(...tried)).out).toContain(said);
  expect((await run(...moss)).out).not.toContain("It goes on from");
});

test("a trial that is typed and in the file counts once, and the typed ones come last", async () => {
  const both = await json(...tried, "--trial", firstTrial, "--trial", secondTrial);
  const typed = await json(...moss, "--trial", firstTrial, "--trial", secondTrial);
  expect(both).toEqual(typed);
  const { out } = await run(...tried, "--trial", firstTrial);
  expect(out).toContain("Recipe after 2 trials");
  expect(out).toContain("It goes on from the trial of moss in the batch file.");
  expect(out).toContain("Or add to the 500 mL of the last trial");
});

test("trials of the file that do not fit the recipe are not used, which is said", async () => {
  for (const other of [
    ["--dyes", "straw,lagoon"],
    ["--base", "white"],
    // The trials are then on white, and the recipe on the base of the swatches.
    ["--set", "dyes.moss.base=white", "--set", "parts.bead.blank=0.95"],
  ]) {
    const { out } = await run(...tried, ...other);
    expect(out).not.toContain("Recipe after");
    expect(out.replace(/\s+/g, " ")).toContain("The trials of moss in the batch file are not used");
  }
});

test("trials with a dye that the mix does not have are left out of the lines to paste, which is said", async () => {
  expect((await run(...moss, "--trial", firstTrial)).out).not.toContain("left out");
  const { out } = await run("mixing.yaml", "--target", "65,-22,20", "--trial", firstTrial);
  expect(out).toMatch(/mix: \{ straw: \S+ mL\/L, lagoon: \S+ mL\/L \}/);
  expect(out.replace(/\s+/g, " ")).toContain("1 trial is left out, with a dye that this mix does not have");
  expect(out).not.toContain("    trials:");
});

test("the mix that a recipe replaces is not among the baths that share the tank", async () => {
  const own = await run(...moss, "--tank", "fourteen");
  expect(own.out).not.toContain("Baths that share the tank");
  const other = await run("mixing.yaml", "--target", "58,-8,18", "--tank", "fourteen");
  expect(other.out).toContain("Order that does least harm");
});

test("a powder is weighed, in the recipe and in a trial", async () => {
  // Without the mix of the file, which has rose by volume.
  const powder = [
    ...["dyes.rose.dilution=20 g/L", "dyes.rose.price=90.00 /kg", "dyes.moss.trials=[]"],
    "dyes.moss.mix={ straw: 50 mL/L, lagoon: 20 mL/L }",
  ].flatMap((one) => ["--set", one]);
  const [{ dyes, waterMl, coldMl }] = (await json(...moss, ...powder)).recipes;
  const rose = dyes.find(({ dye }: { dye: string }) => dye === "rose");
  expect(rose.powderG).toBeCloseTo((rose.strength * 20 * coldMl) / 1000, 6);
  const liquid = dyes.reduce(
    (sum: number, one: { concentrateMl?: number }) => sum + (one.concentrateMl ?? 0),
    0,
  );
  expect(liquid + waterMl).toBeCloseTo(coldMl, 6);
  const trial = "straw 38.4 mL, rose 4.1 g, lagoon 10 mL, water 451 mL, 60 s: 57.7,1.4,20.3";
  expect((await run(...moss, ...powder, "--trial", trial)).status).toBe(0);
});
