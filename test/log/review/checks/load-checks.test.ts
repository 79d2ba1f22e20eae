import { expect, test } from "vitest";
import { loadSize } from "../../../../src/core/bath/load/load-size.js";
import { reviewLog } from "../../../../src/log/review/review.js";
import type { LoadRow, LogRow } from "../../../../src/log/row/log-row.js";
import { drawnTruth, seeded, shared, work, workshopBatch } from "../workshop.js";

const batch = await workshopBatch();
const rows = work(batch, drawnTruth(seeded(1), batch), seeded(2), { loads: 12 }).rows;
const loads = rows.filter((row): row is LoadRow => row.event === "load");
const changed = loads[5]!;
const one = `row ${changed.row}, column`;

/** Codes and messages of a log whose sixth load has other cells. */
const said = (cells: Partial<LoadRow>, all: readonly LogRow[] = rows) =>
  reviewLog(
    batch,
    all.map((row): LogRow => (row === changed ? { ...changed, ...cells } : row)),
    shared,
  ).faults.map(({ code, severity, message }) => [code, severity, message] as const);

test("a log whose loads agree is not warned of", () => {
  expect(said({})).toEqual([]);
});

test("seconds that do not give the colour of the row are named, with those that do", () => {
  for (const seconds of [changed.seconds! / 100, changed.seconds! * 3]) {
    const [[code, severity, message] = [], ...more] = said({ seconds });
    expect([code, severity, more]).toEqual(["log-odd-load", "warning", []]);
    const its = new RegExp(
      `^${one} seconds: a dip of ${seconds} s does not give the colour of the row, which takes about (\\d+) s$`,
    ).exec(message!);
    expect(Number(its![1]) / changed.seconds!).toBeGreaterThan(0.7);
    expect(Number(its![1]) / changed.seconds!).toBeLessThan(1.4);
  }
  expect(said({ seconds: changed.seconds! * 1.5 })).toEqual([]);
});

test("a shade that its dip is far from is named", () => {
  expect(changed.shade).toBe("brick-deep");
  const faults = said({ shade: "brick-light" });
  expect(faults).toHaveLength(1);
  expect(faults[0]![2]).toMatch(
    new RegExp(
      `^${one} shade: a dip of \\d+ s is not one for shade "brick-light", which takes about [23]\\d s$`,
    ),
  );
});

test("a dye three times as slow as the sheet has all its loads wrong, and none is odd beside the others", () => {
  const slow = rows.map(
    (row): LogRow => (row.event === "load" ? { ...row, seconds: row.seconds! * 3 } : row),
  );
  const quick = rows.map(
    (row): LogRow => (row.event === "load" ? { ...row, seconds: row.seconds! / 3 } : row),
  );
  expect(said({}, slow)).toEqual([]);
  expect(said({}, quick)).toEqual([]);
});

test("a shade or base that the batch file does not have is named once, with those that it has", () => {
  expect(said({ shade: "brick-lite" })).toEqual([
    [
      "log-unknown-shade",
      "warning",
      `${one} shade: the shade "brick-lite" of dye "brick" is not in the batch file: its loads are not judged`,
    ],
  ]);
  expect(said({ base: "whit" })).toEqual([
    [
      "log-unknown-base",
      "warning",
      `${one} base: the base "whit" is not in the batch file: its loads count as on the base of the dye`,
    ],
  ]);
  const all = rows.map((row): LogRow => (row.event === "load" ? { ...row, shade: "brick-lite" } : row));
  const faults = reviewLog(batch, all, shared).faults;
  expect(faults.map(({ message }) => message.split(",")[0])).toEqual([`row ${loads[0]!.row}`]);
  expect(faults[0]!.help).toBe(
    "correct the row, or add it under shades, which has brick-light and brick-deep",
  );
});

test("a tank that differs in capitals only is named; another tank is another bath", () => {
  expect(said({ bath: "Six" })).toEqual([
    ["log-other-bath", "warning", `${one} bath: bath "Six" counts as another one than tank "six"`],
  ]);
  expect(said({ bath: "nine" })).toEqual([]);
});

test("a load of more than twice the parts that fit is named", () => {
  const { tank } = batch.baths[0]!;
  const most = loadSize(batch.parts.find(({ name }) => name === changed.part)!, tank, batch.handling).parts;
  const many = (parts: number) => said({ parts }).filter(([code]) => code === "log-many-parts");
  expect(many(2 * most)).toEqual([]);
  expect(many(2 * most + 1)).toEqual([
    [
      "log-many-parts",
      "warning",
      `${one} parts: a load of tank "six" holds ${most} of part "clip", not ${2 * most + 1}`,
    ],
  ]);
});
