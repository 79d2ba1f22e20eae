import { expect, test } from "vitest";
import type { Batch } from "../../../src/core/model/batch.js";
import type { Figures } from "../../../src/core/quality/estimates/figures.js";
import { dyeLog } from "../../../src/log/review/dye-log.js";
import type { DumpRow, LogRow } from "../../../src/log/row/log-row.js";
import { drawnTruth, seeded, shared, work, workshopBatch } from "./workshop.js";

const batch = await workshopBatch();
const truth = drawnTruth(seeded(3), batch);
const { rows } = work(batch, truth, seeded(4), { loads: 20 });

const offBy = (log: readonly LogRow[], of: Batch = batch) => {
  const read = dyeLog(of, of.baths[0]!.dye, log, shared);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value.evidence.nextLoadsOff;
};
const figures: Figures = { ...truth, uptakePerDm2: 0.1 };

test("a sheet with the figures of the bath makes the next loads right, one with others by what they differ", () => {
  const off = offBy(rows);
  expect(off(figures, figures)).toBeCloseTo(0, 6);
  const longer = off({ ...figures, timeFactor: 1.1 * figures.timeFactor }, figures);
  // Longer dips take up more dye, so that the bath gives a little of it back.
  expect(longer).toBeGreaterThan(0.07);
  expect(longer).toBeLessThan(Math.log(1.1));
  const weaker = off(figures, { ...figures, uptakePerDm2: 0.3 });
  expect(weaker).toBeLessThan(-0.02);
});

test("a bath that was dumped goes on as a fresh one", () => {
  const last = rows.at(-1)!;
  const dump: DumpRow = { row: last.row! + 1, time: last.time, bath: "six", event: "dump" };
  const more = { ...figures, uptakePerDm2: 0.3 };
  // What the log did to the bath is gone: only the next ten loads tell.
  expect(Math.abs(offBy([...rows, dump])(figures, more))).toBeLessThan(Math.abs(offBy(rows)(figures, more)));
});

test("the next loads are like the last ten", () => {
  const last = rows.at(-1)!;
  const dump: DumpRow = { row: last.row! + 1, time: last.time, bath: "six", event: "dump" };
  const loads = rows.filter(({ event }) => event === "load");
  const withMore = (fromEnd: number) =>
    offBy([
      ...rows.map((row) => (fromEnd > 0 && row === loads.at(-fromEnd) ? { ...row, parts: 80 } : row)),
      dump,
    ])(figures, {
      ...figures,
      uptakePerDm2: 0.3,
    });
  // What came before them only moves their own fresh times a little.
  const moved = [11, 10].map((fromEnd) => Math.abs(withMore(fromEnd) - withMore(0)));
  expect(moved[1]).toBeGreaterThan(10 * moved[0]!);
});

test("a bath that is topped up by its rule gets what the sheet asks for, one without a rule what was poured", () => {
  const loads = rows.filter(({ event }) => event !== "top-up");
  const more = { ...figures, uptakePerDm2: 0.3 };
  const withRule = (topUp: "none" | "strength"): Batch => ({
    ...batch,
    baths: batch.baths.map((bath) => ({ ...bath, topUp })),
  });
  const [none, strength] = (["none", "strength"] as const).map((rule) => offBy(rows, withRule(rule)));
  // A sheet that believes in a larger uptake pours more, and that makes the same bath stronger.
  expect(strength!(more, figures)).not.toBeCloseTo(none!(more, figures), 3);
  // Where nobody topped up, the rule changes nothing.
  const untouched = (["none", "strength"] as const).map((rule) =>
    offBy(loads, withRule(rule))(more, figures),
  );
  expect(untouched[0]).toBeCloseTo(untouched[1]!, 12);
});

test("a bath above its mark is asked for no dye, and loses none", () => {
  const [first, ...others] = rows.filter(({ event }) => event === "load").slice(0, 10);
  const topUp = rows.find(({ event }) => event === "top-up")!;
  const overfilled = { ...topUp, time: first!.time, volumeL: 7, concentrateMl: 0 } as LogRow;
  const log = [rows[0]!, first!, overfilled, ...others];
  const more = { ...figures, uptakePerDm2: 0.3 };
  const off = (rule: "none" | "level") =>
    offBy(log, { ...batch, baths: batch.baths.map((bath) => ({ ...bath, topUp: rule })) })(more, figures);
  expect(off("level")).toBeCloseTo(off("none"), 12);
  expect(Math.abs(off("none"))).toBeGreaterThan(0.01);
});

test("the next loads are those of the tank that was worked last, whichever is first in the batch file", () => {
  const tank = batch.tanks.find(({ name }) => name === "fourteen")!;
  const two: Batch = { ...batch, baths: [...batch.baths, { ...batch.baths[0]!, tank, index: 1 }] };
  const inFourteen = (of: readonly LogRow[], days: number): LogRow[] =>
    of.map((row) => ({
      ...row,
      row: row.row! + 100,
      bath: tank.name,
      time: { ...row.time, seconds: row.time.seconds + 86_400 * days },
    }));
  const more = { ...figures, uptakePerDm2: 0.3 };
  const some = rows.slice(0, 3);
  const alone = offBy(inFourteen(some, 30), two)(figures, more);
  expect(offBy([...rows, ...inFourteen(some, 30)], two)(figures, more)).toBeCloseTo(alone, 12);
  expect(offBy([...inFourteen(some, -30), ...rows], two)(figures, more)).toBeCloseTo(
    offBy(rows, two)(figures, more),
    12,
  );
});

test("a bath that was made up again among the last ten loads is made up again among the next", () => {
  const [first, second, third] = rows.filter(({ event }) => event === "load");
  const madeUp = { ...rows[0]!, time: second!.time } as LogRow;
  const more = { ...figures, uptakePerDm2: 0.3 };
  const [again, once] = [
    [rows[0]!, first!, madeUp, second!],
    [rows[0]!, first!, second!, third!],
  ].map((log) => Math.abs(offBy(log)(figures, more)));
  expect(again).toBeLessThan(0.5 * once!);
});

test("loads that find no dye in the bath do not count", () => {
  const [first, second] = rows.filter(({ event }) => event === "load");
  const dump: DumpRow = { row: 99, time: second!.time, bath: "six", event: "dump" };
  const off = offBy([rows[0]!, first!, { ...second!, parts: 300 } as LogRow, dump]);
  const greedy = { ...figures, uptakePerDm2: 50 };
  const slower = off({ ...greedy, timeFactor: 1.1 * figures.timeFactor }, greedy);
  // The second load takes all the dye, so that the mean is that of the first two.
  expect(slower).toBeGreaterThan(0.04);
});

test("without a load nothing goes wrong", () => {
  expect(offBy(rows.slice(0, 1))(figures, { ...figures, uptakePerDm2: 0.3 })).toBe(0);
});
