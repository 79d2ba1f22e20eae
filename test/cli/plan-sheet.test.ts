import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const sheet = async (...args: string[]): Promise<string> =>
  (await runFake(["plan", ...args], { ...folderIo(examples), columns: 80 })).out;
const json = async (...args: string[]) =>
  JSON.parse((await runFake(["plan", ...args, "--format", "json"], folderIo(examples))).out);

/** The pages of the baths: from each heading of a bath to the next, or to the day. */
const pages = (out: string): string[] => out.split(/^(?=Bath \d+: |The day)/m).slice(1, -1);
const flat = (text: string): string => text.replace(/\s+/g, " ");

test("the run sheet of a day with two baths has at most 120 lines of at most 80 columns", async () => {
  const lines = (await sheet("restock.yaml")).trimEnd().split("\n");
  expect(lines.length).toBeLessThanOrEqual(120);
  for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(80);
});

test("the page of a bath holds what hands do, in their order, and nothing else", async () => {
  for (const file of ["minimal.yaml", "restock.yaml", "warnings.yaml", "trays.yaml"]) {
    const found = pages(await sheet(file));
    expect(found).toHaveLength((await json(file)).baths.length);
    for (const page of found) {
      for (const foreign of [
        /\b(EUR|cost|price|labour|margin)/i,
        /kWh|\bW\b/,
        /†|assum|warning|caution/i,
        /\blife|\blasts|refresh|per part/i,
      ])
        expect([file, page.match(foreign)?.[0]]).toEqual([file, undefined]);
      const steps = [
        /our /,
        /Heater on/,
        /Each load: rack/,
        / DIP /,
        /Switch all off/,
        /Label: |disposed of/,
      ];
      const at = steps.map((step) => flat(page).search(step));
      expect(at).not.toContain(-1);
      expect(at).toEqual([...at].sort((a, b) => a - b));
    }
  }
});

test("the page of a bath has one line a load, and each top-up under the load after which it falls", async () => {
  const { baths } = await json("restock.yaml");
  const found = pages(await sheet("restock.yaml"));
  for (const [i, { loads }] of baths.entries()) {
    const rows = found[i]!.split("\n").filter((line) => /^ *\d+:\d\d |^ {2}then top up/.test(line));
    const wanted = loads.flatMap((load: { load: number; topUp: object | null }) => [
      expect.stringMatching(new RegExp(`^ *\\d+:\\d\\d +\\d+\\.\\d +\\d\\d:\\d\\d +${load.load} `)),
      ...(load.topUp === null ? [] : [expect.stringMatching(/^ {2}then top up: .* of 19 °C$/)]),
    ]);
    expect(rows).toEqual(wanted);
  }
});

test("what the sheet gives for the next batch file starts that batch with the bath that is left", async () => {
  const bath = (start: string) => [
    "restock.yaml",
    "--set",
    `baths.0={ tank: six, dye: brick, topUp: strength, every: 7 d, start: ${start} }`,
  ];
  const [first] = (await json(...bath("fresh"))).baths;
  const { start, coldVolumeL, strength, areaDm2 } = first.carryOver;
  expect(flat(await sheet(...bath("fresh")))).toContain(`Next batch file: start: ${start}`);
  const [next] = (await json(...bath(start))).baths;
  expect(Math.abs(next.makeUp.volumeColdL - coldVolumeL)).toBeLessThanOrEqual(0.005);
  expect(Math.abs(next.start.strength - strength)).toBeLessThanOrEqual(0.0005);
  expect(next.start).toMatchObject({ ageDays: 7, areaDm2: expect.closeTo(areaDm2, -0.4) });
  // It has evaporated under its mark, and is filled before it is heated.
  const { waterMl, celsius } = next.startTopUp;
  expect([Math.round(1000 * (first.makeUp.volumeColdL - next.makeUp.volumeColdL)), celsius]).toEqual([
    Math.round(waterMl + next.startTopUp.concentrateMl),
    19,
  ]);
  expect(flat(await sheet(...bath(start)))).toContain(
    `Before you heat it, add ${next.startTopUp.concentrateMl.toFixed(1)} mL of concentrate and ${waterMl.toFixed(0)} mL of water of 19 °C.`,
  );
});

test("a jug's label gives the age at a date; where the next batch is, only the file knows", async () => {
  const kept = "baths.0.start={ volume: 5.9 L, age: 12 d }";
  expect(flat(await sheet("restock.yaml"))).toContain("made 2026-10-05, use by 2026-12-04.");
  expect(flat(await sheet("restock.yaml", "--set", kept))).toContain(
    "12 d old on 2026-10-05, use by 2026-11-22.",
  );
  const undated = flat(await sheet("minimal.yaml"));
  expect(undated).toContain("made (today's date).");
  expect(undated).toContain("Next batch file, the days until then added to the age: start: {");
  expect(flat(await sheet("minimal.yaml", "--set", "dyes.brick.shelfLife=30 d"))).toContain(
    "made (today's date), keeps 30 d from then.",
  );
  const old = ["dyes.brick.shelfLife=30 d", "baths.0.start={ volume: 5.9 L, age: 40 d }"];
  const stale = flat(await sheet("minimal.yaml", ...old.flatMap((one) => ["--set", one])));
  expect(stale).toContain(
    "40 d old on (today's date). It is past its shelf life: make it up fresh next time.",
  );
  expect(stale).not.toContain("keeps -");
});

test("a bath cools before it is emptied, unless it is cool already or the room is too warm for it", async () => {
  const { baths, timeline } = await json("minimal.yaml");
  const minutes = Math.ceil(baths[0].coolMinutes);
  expect(await sheet("minimal.yaml")).toContain(
    `Switch all off, lid off; empty it under 45 °C, after ${Math.floor(minutes / 60)} h ${minutes % 60} min.`,
  );
  const [cooling] = timeline.filter(({ what }: { what: string }) => what === "cool");
  expect(cooling.endMinute - cooling.startMinute).toBeCloseTo(baths[0].coolMinutes, 9);
  expect(flat(await sheet("minimal.yaml", "--set", "dyes.brick.temperature=40 °C"))).toContain(
    "Switch all off, lid off; it may be emptied at once, since it is under 45 °C.",
  );
});
