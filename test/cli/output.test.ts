import { expect, test } from "vitest";
import { makeUpArgs, runFake } from "./fake-io.js";

const tooStrong = [
  "mix",
  "--from-volume",
  "5.6L",
  "--from-strength",
  "130%",
  "--volume",
  "6L",
  "--dilution",
  "1:9",
];

test("--out writes the whole report to the file and nothing to stdout", async () => {
  const direct = await runFake(makeUpArgs);
  const { status, out, files } = await runFake([...makeUpArgs, "--out", "sheet.txt"]);
  expect([status, out]).toEqual([0, ""]);
  expect([...files]).toEqual([["sheet.txt", direct.out]]);
});

test("nothing is written on bad input, and every fault is reported in one run", async () => {
  const { status, out, err, files } = await runFake([
    "mix",
    "--volume",
    "6",
    "--dilution",
    "1/9",
    "--temperature",
    "80",
    "--out",
    "sheet.txt",
  ]);
  expect([status, out, files.size]).toEqual([2, "", 0]);
  expect(err.match(/^error\[\S+\]: --\w+/gm)).toEqual([
    "error[unit-missing]: --volume",
    "error[dilution-form]: --dilution",
    "error[unit-missing]: --temperature",
  ]);
});

test("a file that cannot be written is status 2 with the reason", async () => {
  const refuse = (code: string) => async () => {
    throw Object.assign(new Error(code), { code });
  };
  for (const [code, reason] of [
    ["ENOENT", "there is no such folder"],
    ["ENOSPC", "the disk is full"],
    ["EACCES", "it may not be written"],
  ] as const) {
    const { status, err } = await runFake([...makeUpArgs, "--out", "a/b.txt"], {
      replaceFile: refuse(code),
    });
    expect([status, err]).toEqual([2, `error[write]: a/b.txt was not written: ${reason}\n`]);
  }
  expect((await runFake([...makeUpArgs, "--out", "a.txt"], { replaceFile: refuse("EOTHER") })).status).toBe(
    70,
  );
});

test("a warning leaves status 0, fails under --strict, and is silent but counted under --quiet", async () => {
  const plain = await runFake(tooStrong);
  expect(plain.status).toBe(0);
  expect(plain.err).toMatch(
    /^warning\[too-strong\]: the bath is too strong: water alone leaves 121.3 % strength\n +in 6 L; for 100 % take out 985 mL first/,
  );
  const strict = await runFake([...tooStrong, "--strict"]);
  expect([strict.status, strict.out]).toEqual([1, plain.out]);
  const quiet = await runFake([...tooStrong, "--strict", "--quiet"]);
  expect([quiet.status, quiet.err]).toEqual([1, ""]);
});

test("--quiet keeps errors", async () => {
  expect((await runFake(["mix", "--volume", "6", "--dilution", "1:9", "--quiet"])).err).toMatch(
    /^error\[unit-missing\]: --volume/,
  );
});

test("options of CSV are refused with other formats, and impossible ones with CSV", async () => {
  const refused = async (...more: string[]) => {
    const { status, out, err } = await runFake([...makeUpArgs, ...more]);
    expect([more, status, out]).toEqual([more, 2, ""]);
    return err.replace(/\n {3,}/g, " ").split("\n")[0];
  };
  expect(await refused("--bom")).toBe("error[usage]: --bom: only CSV and TSV take a byte order mark");
  expect(await refused("--format", "json", "--decimal", "comma")).toBe(
    "error[usage]: --decimal: only CSV and TSV have a decimal sign to choose",
  );
  expect(await refused("--format", "tsv", "--delimiter", ";")).toBe(
    "error[usage]: --delimiter: only CSV has a delimiter to choose",
  );
  expect(await refused("--format", "csv", "--delimiter", "ab")).toBe(
    'error[usage]: --delimiter: "ab" cannot separate columns',
  );
  expect(await refused("--format", "csv", "--delimiter", '"')).toBe(
    'error[usage]: --delimiter: """ cannot separate columns',
  );
  expect(await refused("--format", "csv", "--delimiter", ",", "--decimal", "comma")).toBe(
    "error[usage]: --delimiter: a comma cannot separate both columns and decimals",
  );
  expect(await refused("--format", "csv", "--decimal", "dot")).toBe(
    'error[usage]: --decimal: "dot" is not a decimal sign',
  );
  expect(await refused("--format", "svg")).toBe(
    'error[usage]: --format: "svg" is not a format of this command',
  );
  expect(await refused("--out", "")).toBe("error[usage]: --out: the file has no name");
});

test("colour is written to a terminal, and not to a pipe, a file, or where it is refused", async () => {
  const mark = "\u001b[";
  const terminal = { outIsTerminal: true, errIsTerminal: true, columns: 80 };
  const coloured = async (argv: readonly string[], env: Record<string, string>, isTerminal = true) => {
    const { out, err, files } = await runFake(argv, { ...(isTerminal ? terminal : {}), env });
    const text = out + err + [...files.values()].join("");
    expect(text.length).toBeGreaterThan(100);
    return text.includes(mark);
  };
  expect(await coloured(tooStrong, {})).toBe(true);
  expect(await coloured(tooStrong, {}, false)).toBe(false);
  expect(await coloured(tooStrong, { NO_COLOR: "1" })).toBe(false);
  expect(await coloured([...tooStrong, "--no-color"], { FORCE_COLOR: "1" })).toBe(false);
  expect(await coloured(tooStrong, { NO_COLOR: "1", FORCE_COLOR: "1" })).toBe(false);
  expect(await coloured(tooStrong, { FORCE_COLOR: "1" }, false)).toBe(true);
  expect(await coloured([...makeUpArgs, "--out", "sheet.txt"], { FORCE_COLOR: "1" })).toBe(false);
  expect(await coloured([...makeUpArgs, "--format", "markdown"], { FORCE_COLOR: "1" })).toBe(false);
});

test("a terminal without a usable width gets text of 80 columns, a tiny one of 20", async () => {
  const at = (columns: number | undefined, ...args: readonly string[]) =>
    runFake(args, { columns, outIsTerminal: true, errIsTerminal: true, env: { NO_COLOR: "1" } });
  const colour = ["colour", "65.9,44.6,23.0"];
  for (const args of [
    makeUpArgs,
    tooStrong,
    colour,
    ["mix", "--volume", "6"],
    ["--help"],
    ["mix", "--help"],
  ]) {
    const usual = await at(80, ...args);
    for (const columns of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, undefined])
      expect([columns, await at(columns, ...args)]).toEqual([columns, usual]);
    const least = await at(20, ...args);
    for (const columns of [1, 5, 19, 19.5]) expect(await at(columns, ...args)).toEqual(least);
  }
});
