import { describe, expect, test } from "vitest";
import { formats } from "../../../src/report/format/formats.js";
import { folderIo } from "../../tools/folder-io.js";
import { runFake } from "../fake-io.js";

const examples = new URL("../../../examples", import.meta.url).pathname;

/** Signs that act on a terminal, turn or hide text, one of each sort and the ends of every range. */
const signs = [
  ..."\u0001\u0007\u0008\u001b\u001f\u007f\u0080\u009b\u009f\u00ad\u061c\u200b\u200d\u200e\u200f\u2028\u2029",
  ..."\u202a\u202e\u2060\u2066\u2069\ufeff\u{e0041}",
  "\ud800",
];
const sly = signs.join("");
/** Any of them, and any other sign that Unicode counts among them. Line ends are the writers' own. */
const raw = /[^\P{C}\n\u00a0]|\p{Zl}|\p{Zp}/u;

/** A half of a pair alone cannot be written as UTF-8. */
const wellFormed = (text: string): string => text.replace(/\ud800/g, "\ufffd");

/** Escapes in a text, those that are broken over two lines too. */
const escapesOf = (text: string): number =>
  text.replace(/\s+/g, "").match(/\\u(?:[0-9a-f]{4}|\{[0-9a-f]+\})/g)?.length ?? 0;
const people = (Object.keys(formats) as (keyof typeof formats)[]).filter((name) => formats[name].forPeople);

/** Those that a batch may have in its names: controls are refused, white space is made one space. */
const hiding = signs.filter((sign) => !/\p{Cc}|\s/u.test(sign)).join("");

/** A batch that has them in every name, in JSON so that none needs an escape of YAML. */
const batch = JSON.stringify({
  batch: `batch ${hiding}`,
  currency: "EUR",
  tanks: { [`tank ${hiding}`]: { volume: "6 L", capacity: "7 L", surface: "450 cm2", heater: "800 W" } },
  bases: { [`base ${hiding}`]: { lab: [92, 0, -2] } },
  dyes: {
    [`dye ${hiding}`]: {
      dilution: "1:9",
      temperature: "80 °C",
      price: "46 /L",
      base: `base ${hiding}`,
      notes: `note ${hiding}`,
      swatches: [
        { time: "30 s", lab: [73, 33, 16] },
        { time: "60 s", lab: [66, 44, 23] },
        { time: "180 s", lab: [55, 56, 32] },
      ],
    },
  },
  parts: { [`part ${hiding}`]: { mass: "6 g", area: "41 cm2", blank: 1.5 } },
  shades: { [`shade ${hiding}`]: { dye: `dye ${hiding}`, time: "60 s" } },
  baths: [{ tank: `tank ${hiding}`, dye: `dye ${hiding}` }],
  orders: [{ part: `part ${hiding}`, shade: `shade ${hiding}`, base: `base ${hiding}`, quantity: 40 }],
  limits: { costPerPart: 0.1 },
});
const pairs = `L1,a1,b1,L2,a2,b2,"name ${sly}"\n50,0,0,51,0,0,"cell ${sly}"\n`;
const file = (text: string) =>
  folderIo(examples, new Map([[`file ${sly}`, text]])) satisfies Parameters<typeof runFake>[1];
const run = (text: string, command: string, ...args: string[]) =>
  runFake([command, ...args], {
    ...file(text),
    outIsTerminal: true,
    errIsTerminal: true,
    env: { NO_COLOR: "1" },
  });

describe("control characters of what is read", () => {
  const calls: readonly (readonly [text: string, ...args: string[]])[] = [
    [batch, "plan", `file ${sly}`],
    [batch, "bath", `file ${sly}`],
    [batch, "cost", `file ${sly}`, "minimal.yaml"],
    [batch, "shade", `file ${sly}`, "--target", `shade ${hiding}`],
    [batch, "sweep", `file ${sly}`, "--vary", `baths.0.tank=tank ${hiding}`],
    [batch, "check", `file ${sly}`],
    [pairs, "compare", "--pairs", `file ${sly}`],
  ];
  for (const [text, command, ...args] of calls)
    test(`of ${command} never reach people raw: they are shown as escapes`, async () => {
      const drawn = command === "shade" || command === "bath";
      for (const format of people.filter((name) => drawn || formats[name].needs === null)) {
        const { status, out, err } = await run(text, command!, ...args, "--format", format);
        expect([format, status]).not.toEqual([format, 70]);
        expect([format, err, out]).toEqual([
          format,
          expect.not.stringMatching(raw),
          expect.not.stringMatching(raw),
        ]);
        expect([format, escapesOf(out + err) >= [...hiding].length]).toEqual([format, true]);
      }
    });

  test("are exact in data", async () => {
    const plan = JSON.parse((await run(batch, "plan", `file ${sly}`, "--format", "json")).out);
    expect(plan.orders[0].part).toBe(`part ${hiding}`);
    for (const format of ["csv", "tsv", "ndjson"]) {
      const { out } = await run(pairs, "compare", "--pairs", `file ${sly}`, "--format", format);
      const cell = wellFormed(`cell ${sly}`);
      expect([format, out]).toEqual([
        format,
        expect.stringContaining(format === "ndjson" ? JSON.stringify(cell) : cell),
      ]);
    }
  });

  test("of names and values never reach the terminal raw in what is wrong with them", async () => {
    for (const args of [
      ["plan", `none ${sly}.yaml`],
      ["plan", `file ${sly}`],
      ["mix", "--volume", `6 ${sly}`, "--dilution", "1:9"],
      ["mix", `--vol${sly}`],
      [`mi${sly}x`],
      ["plan", "restock.yaml", "--set", `handling.drain=${sly}`],
      ["plan", "restock.yaml", "--set", `${sly}=1`],
      ["plan", "restock.yaml", "--out", `sheet.${sly}`],
      ["plan", "restock.yaml", "--format", sly],
      ["compare", sly, "50,0,0"],
      ["cost", `none ${sly}/*.yaml`],
    ]) {
      const { status, out, err } = await run(`batch: "a\n  ${sly}`, args[0]!, ...args.slice(1));
      expect([args, status, out]).toEqual([args, 2, ""]);
      expect(err).not.toMatch(raw);
      expect([args, escapesOf(err) > 5]).toEqual([args, true]);
    }
  });

  test("of limits that are exceeded and of defects never reach the terminal raw", async () => {
    const { err } = await run(batch, "cost", `file ${sly}`, "minimal.yaml");
    expect(err).toMatch(/^file .*\\u202e.*: .*\(over-limit\)$/m);
    const failing = {
      ...(await import("../../../src/cli/commands.js")).commands[0]!,
      load: async () => async () => {
        throw new Error(sly);
      },
    };
    const defect = await runFake(["plan", "x"], {}, [failing]);
    expect([defect.status, defect.err]).toEqual([70, expect.not.stringMatching(raw)]);
  });
});
