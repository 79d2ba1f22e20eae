import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { commands } from "../../../src/cli/commands.js";
import { type FormatName, formatOf, formats } from "../../../src/report/format/formats.js";
import { folderIo } from "../../tools/folder-io.js";
import { runFake } from "../fake-io.js";

const examples = new URL("../../../examples", import.meta.url).pathname;
const written = new Map([
  ["readings.csv", "time_s,uptake\n10,1\n20,1.8\n40,3\n80,4.4\n160,5.5\n"],
  ["pairs.csv", "L1,a1,b1,L2,a2,b2\n50,2,3,51,2,4\n60,0,0,61,0,0\n"],
  [
    "days.csv",
    `time,bath,event,dye,part,shade,base,parts,seconds,celsius,L,a,b
2027-04-16T08:00,six,made-up,brick,,,,,,,,,
2027-04-16T10:00,six,load,,clip,brick-light,white,42,30,79.5,56.4,33.8,10.2
2027-04-16T10:08,six,load,,clip,brick-light,white,42,30,79.4,56.9,33.5,10.1
`,
  ],
  [
    "curves.csv",
    `wavelength_nm,one,two\n${Array.from({ length: 31 }, (_, i) => `${400 + 10 * i},0.5,0.3`).join("\n")}\n`,
  ],
]);
const run = (...args: string[]) => runFake(args, folderIo(examples, written));

/** What a text in each format looks like, and what no text in any other format does. */
const looks: Readonly<Record<FormatName, (text: string) => boolean>> = {
  text: (text) => !/^[{<]|^\||^[\w ]+[,\t]\w+[,\t]/m.test(text),
  json: (text) => JSON.parse(text).schema?.startsWith("dipwright/"),
  ndjson: (text) => text.trimEnd().split("\n").length > 1 && text.trimEnd().split("\n").every(isRecord),
  csv: (text) => /^[\w.]+,\w+,.*\r\n/.test(text) && !text.includes("\t") && rowsOf(text, ",") > 1,
  tsv: (text) => /^[\w.]+\t\w+\t.*\r\n/.test(text) && rowsOf(text, "\t") > 1,
  markdown: (text) => /^\| (---:?|---)( \| |\s\|)/m.test(text),
  html: (text) => text.startsWith("<!doctype html>"),
  svg: (text) => text.startsWith("<svg "),
};
const isRecord = (line: string): boolean => JSON.parse(line) instanceof Object;
const rowsOf = (text: string, delimiter: string): number => parse(text, { delimiter }).length;

/** A call of each command whose format is a choice, all formats of the command possible. */
const calls: readonly (readonly string[])[] = [
  ["plan", "restock.yaml"],
  ["bath", "restock.yaml"],
  ["cost", "restock.yaml"],
  ["offer", "restock.yaml"],
  ["week", "restock.yaml"],
  ["shade", "restock.yaml", "--dye", "brick"],
  ["swatches", "restock.yaml", "--dye", "brick"],
  ["blend", "mixing.yaml", "--target", "moss"],
  ["rework", "mixing.yaml", "--from", "72,38,-6"],
  ["sweep", "restock.yaml", "--vary", "tanks.six.cover=lid,none"],
  ["check", "warnings.yaml"],
  ["review", "restock.yaml", "--log", "days.csv"],
  ["mix", "--volume", "6L", "--dilution", "1:9"],
  ["measure", "models/tray.stl"],
  ["compare", "--pairs", "pairs.csv"],
  ["fit", "readings.csv"],
  ["colour", "--reflectance", "curves.csv"],
  ["keys", "swatches"],
];

describe("formats", () => {
  test("are each named by endings of their own", () => {
    const endings = Object.values(formats).flatMap(({ endings }) => endings);
    expect(new Set(endings).size).toBe(endings.length);
    for (const ending of endings) expect(ending).toMatch(/^[a-z]+$/);
  });

  for (const args of calls)
    test(`of ${args[0]} each write themselves, on stdout by name and to a file by its ending`, async () => {
      const command = commands.find(({ name }) => name === args[0])!;
      for (const name of command.formats) {
        const { status, out } = await run(...args, "--format", name);
        expect([name, status, looks[name](out)]).toEqual([name, 0, true]);
        for (const ending of formatOf(name).endings) {
          const file = `made.${ending}`;
          expect([...(await run(...args, "--out", file)).files]).toEqual([[file, out]]);
        }
      }
    });

  test("are all written by some command that has a choice", () => {
    // `new` and `record` write files of their own beside the result; `schema` is the same in every format.
    const names = commands
      .map(({ name }) => name)
      .filter((name) => !["new", "record", "schema"].includes(name));
    expect(calls.map(([name]) => name)).toEqual(names);
    const found = new Set(commands.flatMap((command) => command.formats));
    expect([...found].sort()).toEqual(Object.keys(formats).sort());
  });

  test("that need more than a report has are refused, and nothing is written", async () => {
    for (const args of [
      ["compare", "50,0,0", "51,0,0"],
      ["colour", "50,0,0"],
    ]) {
      const { status, out, err, files } = await run(...args, "--out", "made.ndjson");
      expect([status, out, files.size]).toEqual([2, "", 0]);
      expect(err).toMatch(/^error\[usage\]: --format: ndjson has one line a row/);
    }
  });
});

describe("--out without --format", () => {
  const idle = commands.map((command) => ({
    ...command,
    load: async () => async () => {
      throw new Error("nothing may be worked");
    },
  }));
  const refused = async (command: string, out: string) => {
    const args = calls.find(([name]) => name === command)!;
    const { status, err, files } = await runFake([...args, "--out", out], folderIo(examples), idle);
    expect([out, status, files.size]).toEqual([out, 2, 0]);
    return err.replace(/\s+/g, " ").trim();
  };

  test("refuses an ending that no format of the command has, and names those it has", async () => {
    for (const out of ["sheet.pdf", "a.b/sheet.yaml", "sheet.svg", "sheet.ndjson", "sheet.csv.gz"])
      expect(await refused("plan", out)).toBe(
        `error[usage]: --out: this command has no format for files that end in .${out.split(".").at(-1)} help: let the name end in .txt, .json, .csv, .tsv or .md, or add --format`,
      );
    expect(await refused("cost", "costs.xlsx")).toContain("in .txt, .json, .csv, .tsv, .md or .ndjson, or");
    expect(await refused("fit", "curve.png")).toContain(".md, .html or .svg, or");
  });

  test("refuses a name without an ending", async () => {
    for (const out of ["sheet", ".csv", "a.csv/sheet", "folder/.csv", "sheet.", "..", "/dev/stdout"])
      expect(await refused("plan", out)).toContain(`--out: "${out}" has no ending that names a format help:`);
  });

  test("takes any name with --format, and capitals", async () => {
    expect([
      ...(await run("plan", "minimal.yaml", "--format", "json", "--out", "sheet")).files.keys(),
    ]).toEqual(["sheet"]);
    expect((await run("plan", "minimal.yaml", "--out", "SHEET.CSV")).files.get("SHEET.CSV")).toMatch(
      /^batch,/,
    );
  });
});
