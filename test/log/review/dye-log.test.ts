import { expect, test } from "vitest";
import { reviewLog } from "../../../src/log/review/review.js";
import type { LoadRow, LogRow } from "../../../src/log/row/log-row.js";
import { drawnTruth, seeded, shared, work, workshopBatch } from "./workshop.js";

const batch = await workshopBatch();
const { rows } = work(batch, drawnTruth(seeded(1), batch), seeded(2), { loads: 6 });
test("a colour from a bath that has no dye by its log teaches nothing, and makes its rows doubted", () => {
  const [madeUp, ...others] = rows;
  const loads = others.filter(({ event }) => event === "load");
  const review = reviewLog(batch, [{ ...madeUp!, concentrateMl: 0 } as LogRow, ...loads], shared);
  if (!review.ok) throw new Error(JSON.stringify(review.faults));
  const { estimates, actions } = review.value;
  const { timeFactor, uptakeMlPerDm2, activationEnergyKJPerMol } = Object.values(estimates)[0]!;
  for (const figure of [timeFactor, uptakeMlPerDm2!, activationEnergyKJPerMol]) {
    expect(figure.told).toBe(false);
    expect(figure.value).toBeGreaterThan(0);
    expect(figure.standardError).toBeGreaterThan(0);
  }
  expect(actions[0]).toContain("check the seconds, shades and colours of its rows");
});

test("a row that leaves nothing in the bath is a fault: too many parts, or a dip of a day", () => {
  const [madeUp, load, ...more] = rows as [LogRow, LoadRow, ...LogRow[]];
  const faultsOf = (change: Partial<LoadRow>) =>
    reviewLog(batch, [madeUp, { ...load, ...change }, ...more], shared).faults.filter(
      ({ severity }) => severity === "error",
    );
  expect(faultsOf({})).toEqual([]);
  for (const change of [{ parts: 1_000_000 }, { seconds: 86_400 }])
    expect(faultsOf(change)).toMatchObject([{ code: "log-empty", path: ["row", load.row, "parts"] }]);
  const dry = reviewLog(batch, [{ ...madeUp, waterMl: 0 } as LogRow, load, ...more], shared);
  expect(dry.faults).toMatchObject([{ code: "log-empty", path: ["row", madeUp.row, "time"] }]);
});
