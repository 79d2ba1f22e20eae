import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLog } from "../../src/log/read/read-log.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const root = new URL("../../", import.meta.url).pathname;
const fixture = (name: string): string => readFileSync(`${root}fixtures/log/${name}.csv`, "utf8");

/** As `record` wrote it. Calc opened it, or had the same typed in: fixtures/generators/calc-logs.mjs. */
const plain = fixture("plain");
/** Calc shows a typed time to the minute, and saves what it shows. */
const toTheMinute = plain.replaceAll(/^(\d{4}-\d\d-\d\dT\d\d:\d\d):\d\d,/gm, "$1,");
const logs = [
  ["opened and saved", "opened", plain],
  ["written in German style, opened and saved", "german", plain],
  ["opened, filled in with decimal commas and saved", "filled-in", plain],
  ["typed in", "typed", toTheMinute],
  ["typed in, saved as stored with all text in quotes", "typed-as-stored", plain],
] as const;
/** 7.4 writes no byte order mark, and line feeds where it runs on Linux. */
const forms = [
  ["", (text: string) => text],
  [
    ", with a byte order mark and CRLF as other versions and Windows have it",
    (text: string) => `\ufeff${text.replaceAll("\n", "\r\n")}`,
  ],
] as const;
const all = logs.flatMap(([how, name, same]) =>
  forms.map(([form, as]) => [`${how}${form}`, as(fixture(name)), same] as const),
);

const spec = "restock.yaml";
const fromLog = ["--set", "baths.0.start=log", "--set", "date=2026-03-05"];
const run = (text: string, ...args: readonly string[]) =>
  runFake([...args], {
    ...folderIo(`${root}examples`, new Map([["baths.csv", text]])),
    now: () => new Date(2026, 2, 5, 9, 30, 5),
  });

test.each(all)(
  "a log saved by LibreOffice Calc 7.4 in a German locale reads the same byte for byte: %s",
  async (_, saved, same) => {
    expect(saved).toMatch(/^\ufeff?"?time"?;"?bath"?;/);
    for (const args of [
      ["review", spec, "--log", "baths.csv"],
      ["review", spec, "--log", "baths.csv", "--format", "json"],
      ["review", spec, "--log", "baths.csv", "--part", "clip"],
      ["plan", spec, "--log", "baths.csv", ...fromLog],
    ]) {
      const [own, german] = [await run(same, ...args), await run(saved, ...args)];
      expect([own.status, own.err]).toEqual([0, ""]);
      expect(own.out.length).toBeGreaterThan(500);
      expect(german).toMatchObject({ status: 0, out: own.out, err: "" });
    }
  },
);

test.each(all)(
  "its rows are the same, notes with quotes, umlauts and line breaks too: %s",
  (_, saved, same) => {
    const rows = (text: string) => readLog("baths.csv", text).log!.rows;
    const notes = rows(saved).flatMap(({ note }) => note ?? []);
    expect(notes.map((note) => note.replace(/\s+/g, " "))).toEqual([
      'Lüfter an; "Spüle" frei',
      "'=heiß?",
      "Hitze, später: +2",
    ]);
    const without = (text: string) => rows(text).map(({ note: _note, ...row }) => row);
    expect(without(saved)).toEqual(without(same));
  },
);

test("a typed note keeps its line break", () => {
  expect(fixture("typed")).toContain('"Hitze, später:\n+2"');
});

const load = ["--bath", "six", "--event", "load", "--part", "clip", "--shade", "brick-light"];
const figures = ["--base", "white", "--parts", "24", "--seconds", "31.5", "--celsius", "79.5"];
const appended = async (text: string, ...args: readonly string[]) => {
  const { status, err, files } = await run(text, "record", "baths.csv", ...args);
  expect([status, err]).toEqual([0, ""]);
  return files.get("baths.csv")!;
};

test.each(all)(
  "record appends to it in its own form, and then both still teach the same: %s",
  async (_, saved, same) => {
    const [own, german] = [
      await appended(same, ...load, ...figures),
      await appended(saved, ...load, ...figures),
    ];
    // The first number with a decimal mark shows which.
    const comma = /;\d+[.,]\d/.exec(saved)![0].includes(",");
    const row = "2026-03-05T09:30:05;six;load;;clip;brick-light;white;24;31.5;79.5;;;;;;;;;;;;";
    const end = saved.includes("\r\n") ? "\r\n" : "\n";
    expect(german).toBe(`${saved}${comma ? row.replaceAll(".", ",") : row}${end}`);
    const review = ["review", spec, "--log", "baths.csv", "--format", "json"];
    expect((await run(german, ...review)).out).toBe((await run(own, ...review)).out);
  },
);

test("what Calc made of 5.125 and 0012 is said: a level over the brim, and lots that differ by zeros", async () => {
  const lost = fixture("lost-point");
  expect(lost).toContain(";5125;12\n");
  const dip = ["--bath", "six", "--event", "load", "--part", "clip", "--parts", "24", "--seconds", "31.5"];
  const again = await appended(lost, ...dip, "--dye-lot", "0012");
  const review = await run(again, "review", spec, "--log", "baths.csv");
  const plan = await run(again, "plan", spec, "--log", "baths.csv", ...fromLog);
  for (const { status, err } of [review, plan]) {
    expect(status).toBe(2);
    expect(err.replace(/\s+/g, " ")).toContain(
      "error[log-over-brim]: row 2, column volumeL: 5125 L is more than 2 times what the tank holds",
    );
  }
  expect(review.err).toContain("warning[log-lot-zeros]: row 5, column dyeLot: lot 0012");
});
