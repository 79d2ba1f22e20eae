import { expect, test } from "vitest";
import { reviewLog } from "../../../src/log/review/review.js";
import type { LoadRow, LogRow } from "../../../src/log/row/log-row.js";
import { drawnTruth, seeded, shared, work, workshopBatch } from "./workshop.js";

const batch = await workshopBatch();
const { rows } = work(batch, drawnTruth(seeded(1), batch), seeded(2), { loads: 6 });
const reviewed = (log: readonly LogRow[]) => {
  const review = reviewLog(batch, log, shared);
  if (!review.ok) throw new Error(JSON.stringify(review.faults));
  return review.value;
};

test("a colour from a bath that has no dye by its log teaches nothing, and makes its rows doubted", () => {
  const [madeUp, ...others] = rows;
  const loads = others.filter((row): row is LoadRow => row.event === "load");
  const parts = 1_000_000;
  for (const log of [
    // Nothing was poured, and a load took all that was.
    [{ ...madeUp!, concentrateMl: 0 } as LogRow, ...loads],
    [madeUp!, { ...loads[0]!, parts }, ...loads.slice(1)],
  ]) {
    const { estimates, actions } = reviewed(log);
    const { timeFactor, uptakeMlPerDm2, activationEnergyKJPerMol } = Object.values(estimates)[0]!;
    for (const figure of [timeFactor, uptakeMlPerDm2!, activationEnergyKJPerMol]) {
      expect(figure.told).toBe(false);
      expect(figure.value).toBeGreaterThan(0);
      expect(figure.standardError).toBeGreaterThan(0);
    }
    expect(actions[0]).toContain("check the seconds, shades and colours of its rows");
  }
});
