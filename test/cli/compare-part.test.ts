import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const compare = (...args: readonly string[]) =>
  runFake(["compare", ...args, "--spec", "restock.yaml"], { ...folderIo(examples), columns: 80 });
const json = async (...args: readonly string[]) => {
  const { status, out } = await compare(...args, "--format", "json");
  return { status, ...JSON.parse(out) };
};
/** What is said below the numbers. */
const said = async (...args: readonly string[]) =>
  (await compare(...args)).out.split("for staining")[1]!.replace(/\s+/g, " ");

const light = "59,31,8.8";

test("compare gives the recorded report of a part that is too light, in every format", async () => {
  const { formats } = await import("../../src/report/format/formats.js");
  for (const format of ["text", "json", "csv", "tsv", "markdown"] as const) {
    const { status, out, err } = await compare(light, "brick-light", "--format", format);
    expect([status, err]).toEqual([1, ""]);
    await expect(out).toMatchFileSnapshot(`golden/compare/part.${formats[format].endings[0]}`);
    if (format === "text") for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(80);
  }
});

test("a shade is the standard wherever it comes, and its tolerance decides", async () => {
  const [one, other] = [await json(light, "brick-light"), await json("brick-light", light)];
  expect(one).toEqual(other);
  expect(one.verdict).toEqual({ formula: "ciede2000", tolerance: 1.5, pass: false });
  expect((await json("brick-light", "56.4,33.9,10.1")).status).toBe(0);
  const strict = await json("brick-light", "56.4,33.9,10.1", "--tolerance", "0.1");
  expect([strict.status, strict.verdict.tolerance]).toEqual([1, 0.1]);
  expect((await json("brick-light", "brick-deep")).verdict).toBeUndefined();
});

test("a second dip takes longer in a weaker or cooler bath", async () => {
  const seconds = async (...args: string[]) =>
    (await json(light, "brick-light", ...args)).part.secondDip.seconds;
  const fresh = await seconds();
  expect(await seconds("--strength", "70%")).toBeGreaterThan(1.3 * fresh);
  expect(await seconds("--temperature", "75C")).toBeGreaterThan(1.2 * fresh);
});

test("compare says what to do with a part", async () => {
  expect(await said(light, "brick-light")).toMatch(
    /Too light: dip it again for \d+ s in a fresh bath of brick at 80 °C; about 0\.\d+ is left then, within the tolerance\./,
  );
  expect(await said(light, "brick-light")).toMatch(/Dip the next load \d+ s longer in such a bath\./);
  expect(await said("52,36,11", "brick-light", "--strength", "70%")).toMatch(
    /Too dark, by \d+ s in a bath of 70 % strength of brick at 80 °C: no dip makes it lighter\. Dip the next load \d+ s shorter/,
  );
  expect(await said("56.8,33.6,9.9", "brick-light")).toMatch(
    /within the tolerance of 1\.5\. Dipped \d+ s too short, for a fresh bath/,
  );
  expect(await said("58,31,14", "brick-light")).toMatch(
    /lies beside the curve of brick, where no dip mends it/,
  );
  expect(await said("62,28,7", "brick-light", "--strength", "50%")).not.toContain("under the shortest dip");
  expect(await said(light, "brick-light")).toContain("under the shortest dip of 15 s");
});

test("several readings of a part are compared by their mean, and how uneven they are is said", async () => {
  const { sample, unevenness, part } = await json("55.8,34.2,10", "57,33.6,10.4", "brick-light");
  expect(sample.given).toBe("mean of 2 readings");
  for (const [i, value] of [56.4, 33.9, 10.2].entries()) expect(sample.lab[i]).toBeCloseTo(value, 10);
  expect(unevenness.readings).toBe(2);
  expect(unevenness.largestDeltaE00).toBeGreaterThan(unevenness.meanDeltaE00);
  expect(part.besideCurve).toBeLessThan(1);
  const { out } = await runFake(["compare", "50,0,0", "51,0,0", "53,0,0"]);
  expect(out).toContain("2 readings of the part:");
});

test("compare refuses several shades with several readings, too many colours, and a bath without a shade", async () => {
  const codes = async (...args: string[]) => {
    const { status, err } = await runFake(["compare", ...args], folderIo(examples));
    return [status, err.match(/^error\[\S+\]: .{0,36}/m)?.[0]];
  };
  expect(await codes("brick-light", light, "brick-deep", "--spec", "restock.yaml")).toEqual([
    2,
    "error[usage]: several readings of a part are compa",
  ]);
  expect(await codes(...Array<string>(27).fill("50,0,0"))).toEqual([
    2,
    "error[usage]: 27 colours are too many",
  ]);
  expect(await codes("50,0,0", "51,0,0", "--strength", "80%")).toEqual([
    2,
    "error[usage]: --strength: without a shade there is",
  ]);
  expect((await codes(light, "brick-light", "--spec", "restock.yaml", "--strength", "0%"))[0]).toBe(2);
});

test("a word that is neither shade nor colour is refused with the shades that it may mean", async () => {
  const refused = async (...args: readonly string[]) => {
    const { status, out, err } = await compare(...args);
    expect([status, out]).toEqual([2, ""]);
    return err.replace(/\s+/g, " ").trim();
  };
  expect(await refused("brick-lihgt", light)).toBe(
    'error[colour-unknown]: A: "brick-lihgt" is neither a shade of the batch nor a colour help: did you mean brick-light?',
  );
  expect(await refused(light, "ochre-in-oil")).toBe(
    'error[colour-unknown]: B: "ochre-in-oil" is neither a shade of the batch nor a colour help: the shades are brick-light, brick-deep, teal-mid and teal-shadow',
  );
  expect(await refused("brick-light", "50,30")).toContain('B: "50,30" is not a colour help: Write "#d9603b"');
  const without = await runFake(["compare", light, "brick-light"]);
  expect(without.err.replace(/\s+/g, " ")).toContain(
    'B: "brick-light" is not a colour help: Write "#d9603b", "#d63", a CSS name such as "tomato", or "hsl(14, 68%, 54%)". A CIELAB colour is "65.9,44.6,23.0". A shade needs --spec FILE.',
  );
});
