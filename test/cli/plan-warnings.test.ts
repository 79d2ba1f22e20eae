import { expect, test } from "vitest";
import { sentence } from "../../src/report/words/sentence.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const plan = (...args: string[]) => runFake(["plan", ...args], folderIo(examples));
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((match) => match[1]!);

interface Said {
  readonly code: string;
  readonly message: string;
  readonly help?: string;
}

/** All that a plan warns of, as its JSON has it. */
async function warningsOf(...args: string[]): Promise<readonly Said[]> {
  const { warnings, exceeded } = JSON.parse((await plan(...args, "--format", "json")).out);
  return [...warnings, ...exceeded];
}

const flat = (text: string): string => text.replace(/\s+/g, " ");
const count = (text: string, piece: string): number => text.split(piece).length - 1;

/** Batches with warnings of their own, of limits and of shades. */
const warned: readonly (readonly string[])[] = [
  ["warnings.yaml"],
  ["restock.yaml", "--set", "limits.costPerPart=5.00", "--set", "handling.rinses=1"],
  ["restock.yaml", "--set", "shades.brick-deep.lab=[40, 0, 0]"],
  ["restock.yaml", "--set", "handling.rinses=1", "--spread", "--draws", "10"],
];

for (const args of warned)
  test(`plan ${args.join(" ")} says each warning exactly once, on the sheet`, async () => {
    const warnings = await warningsOf(...args);
    expect(warnings.length).toBeGreaterThan(0);
    for (const more of [[], ["--quiet"]]) {
      const { out, err } = await plan(...args, ...more);
      expect(err).toBe("");
      for (const { message, help } of warnings) {
        expect([message, count(flat(out), flat(sentence(message)))]).toEqual([message, 1]);
        if (help !== undefined) expect(flat(out)).toContain(flat(`${sentence(message)} ${sentence(help)}`));
      }
    }
    const markdown = await plan(...args, "--format", "markdown");
    expect(markdown.err).toBe("");
    for (const { message } of warnings) expect(markdown.out).toContain(sentence(message).split("*")[0]);
  });

for (const args of warned)
  for (const format of ["json", "csv"])
    test(`plan ${args.join(" ")} says each warning once on stderr beside ${format}, unless --quiet`, async () => {
      const warnings = await warningsOf(...args);
      const { err } = await plan(...args, "--format", format);
      expect(codes(err).sort()).toEqual(warnings.map(({ code }) => code).sort());
      expect((await plan(...args, "--format", format, "--quiet")).err).toBe("");
    });

test("plan says on stderr why there is no sheet", async () => {
  const { status, out, err } = await plan("warnings.yaml", "--set", "tanks.worn.heater=150 W");
  expect([status, out]).toEqual([2, ""]);
  expect(codes(err)).toContain("heater-too-weak");
});

test("plan warns of a spent bath, loose dye, a heater that does not keep up, a quick dip and short stock", async () => {
  expect((await warningsOf("warnings.yaml")).map(({ code }) => code).sort()).toEqual([
    "bath-nearly-spent",
    "bath-starts-low",
    "dip-too-short",
    "heater-slow",
    "rinse-short",
    "stock-short",
    "unknown-repeat",
  ]);
});

test("plan gives status 0 with warnings, 1 under --strict, in every format and said or not", async () => {
  for (const format of ["text", "json", "markdown"])
    for (const more of [[], ["--quiet"]])
      expect([
        format,
        (await plan("warnings.yaml", "--format", format, ...more)).status,
        (await plan("warnings.yaml", "--format", format, "--strict", ...more)).status,
        (await plan("restock.yaml", "--format", format, "--strict", ...more)).status,
      ]).toEqual([format, 0, 1, 0]);
});

test("plan warns that a kept bath's shelf life is left out of its costs until it is known how often the batch comes", async () => {
  const once = ["restock.yaml", "--set", "dyes.brick.shelfLife=60 d", "--set"];
  const bath = "baths.0={ tank: six, dye: brick, topUp: strength";
  for (const [rest, said] of [
    ["}", true],
    [", every: 7 d }", false],
    [", after: dump }", false],
  ] as const) {
    const found = (await warningsOf(...once, bath + rest)).map(({ code }) => code);
    expect([rest, found.includes("unknown-repeat")]).toEqual([rest, said]);
  }
});

test("plan gives status 1 for a limit that is exceeded and a shade out of reach, and prints all the same", async () => {
  const costly = ["restock.yaml", "--set", "limits.costPerPart=5.00"];
  expect((await warningsOf(...costly)).map(({ code }) => code)).toContain("over-limit");
  const { status, out } = await plan(...costly);
  expect([status, out.includes("Over the limit")]).toEqual([1, true]);
  const far = ["restock.yaml", "--set", "shades.brick-deep.lab=[40, 0, 0]"];
  expect((await warningsOf(...far)).map(({ code }) => code)).toContain("shade-out-of-reach");
  expect((await plan(...far)).status).toBe(1);
});
