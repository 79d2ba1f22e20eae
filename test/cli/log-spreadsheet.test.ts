import { parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import { expect, test } from "vitest";
import { columnNames, columnOf } from "../../src/log/row/columns.js";
import { asCsv } from "../log/review/as-csv.js";
import { drawnTruth, seeded, work, workshopBatch } from "../log/review/workshop.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;

/** The log as LibreOffice Calc saves it in a German locale, every text quoted where it is asked to. */
function inGerman(log: string, quoted: boolean): string {
  const rows: string[][] = parse(log);
  const cell = (text: string, column: number, row: number) => {
    const { kind } = columnOf(columnNames[column]!);
    if (row === 0) return text;
    if (kind === "number") return { number: text.replace(".", ",") };
    const [, year, month, day, clock] = /^\d\d(\d\d)-(\d\d)-(\d\d)T(.*)$/.exec(text) ?? [];
    // A cell that it takes for a date is shown as one; some show it as it was typed.
    return clock !== undefined && row % 2 === 0 ? { number: `${day}.${month}.${year} ${clock}` } : text;
  };
  return stringify(
    rows.map((fields, row) => fields.map((text, column) => cell(text, column, row))),
    {
      bom: true,
      delimiter: ";",
      record_delimiter: "\r\n",
      quoted_string: quoted,
      cast: { object: ({ number }) => ({ value: String(number), quoted: false }) },
    },
  );
}

const batch = await workshopBatch();
const random = seeded(4);
const log = asCsv(work(batch, drawnTruth(random, batch), random, { loads: 24 }).rows);
const spec = "restock.yaml";
const fromLog = ["--set", "baths.0.start=log", "--set", "date=2026-03-05"];
const run = (text: string, ...args: readonly string[]) =>
  runFake([...args], {
    ...folderIo(examples, new Map([["baths.csv", text]])),
    now: () => new Date(2026, 2, 5, 9, 30, 5),
  });

test.each([
  ["without quotes", false],
  ["with text in quotes", true],
])(
  "a log saved by LibreOffice Calc in a German locale reads the same byte for byte: %s",
  async (_, quoted) => {
    const saved = inGerman(log, quoted);
    expect(saved).toMatch(/^\ufeff"?time"?;"?bath"?;/);
    expect(saved).toMatch(/;79,\d;/);
    for (const args of [
      ["review", spec, "--log", "baths.csv"],
      ["review", spec, "--log", "baths.csv", "--format", "json"],
      ["review", spec, "--log", "baths.csv", "--part", "clip"],
      ["plan", spec, "--log", "baths.csv", ...fromLog],
    ]) {
      const [plain, german] = [await run(log, ...args), await run(saved, ...args)];
      expect(plain.status).toBe(0);
      expect(plain.out.length).toBeGreaterThan(500);
      expect(german).toMatchObject({ status: 0, out: plain.out, err: plain.err });
    }
  },
);

test("record appends to such a log in its own form, and then both still teach the same", async () => {
  const args = ["--bath", "six", "--event", "load", "--part", "clip", "--shade", "brick-light"];
  const figures = ["--base", "white", "--parts", "24", "--seconds", "31.5", "--celsius", "79.5"];
  const appended = async (text: string) => {
    const { status, err, files } = await run(text, "record", "baths.csv", ...args, ...figures);
    expect([status, err]).toEqual([0, ""]);
    return files.get("baths.csv")!;
  };
  const saved = inGerman(log, true);
  const [plain, german] = [await appended(log), await appended(saved)];
  expect(german).toBe(
    `${saved}2026-03-05T09:30:05;six;load;;clip;brick-light;white;24;31,5;79,5;;;;;;;;;;;;\r\n`,
  );
  const review = ["review", spec, "--log", "baths.csv", "--format", "json"];
  expect((await run(german, ...review)).out).toBe((await run(plain, ...review)).out);
});
