import { expect, test } from "vitest";
import { planBatch } from "../../../src/core/plan/plan.js";
import { reviewLog } from "../../../src/log/review/review.js";
import { cannotTell, toldNevertheless } from "./cannot-tell.js";
import { learn, lotNamed, median, scores, share, study, timesWithin, withLearned } from "./study.js";
import { drawnTruth, seeded, shared, work, workshopBatch } from "./workshop.js";

// test/bench/learning-study.mjs prints the same at large.
const seeds = Array.from({ length: 16 }, (_, i) => i + 1);
const batch = await workshopBatch();

const after30 = seeds.map((seed) => study(batch, seed, 30));

test("after 30 loads the factor on times is known, and the next ten loads miss by little", () => {
  const studied = after30;
  expect(timesWithin(studied, 0.05)).toBeGreaterThanOrEqual(0.93);
  expect(median(studied.map(({ missLearned }) => missLearned))).toBeLessThan(0.5);
  expect(median(studied.map(({ missAssumed }) => missAssumed))).toBeGreaterThan(0.8);
  for (const { holds } of scores(studied)) if (holds !== null) expect(holds).toBeGreaterThanOrEqual(0.85);
  // Where assumed figures were right by chance, readings make them a little worse, and no more.
  const worse = studied.filter((one) => one.missLearned > one.missAssumed + 0.1);
  expect(worse.length).toBeLessThanOrEqual(1);
  for (const { missLearned } of worse) expect(missLearned).toBeLessThan(0.5);
});

test("no workshop spoils more loads with what was learned than without, after 30 loads or 100", () => {
  const after100 = seeds.slice(0, 8).map((seed) => study(batch, seed, 100));
  for (const { failedLearned, failedAssumed } of [...after30, ...after100])
    expect(failedLearned).toBeLessThanOrEqual(failedAssumed);
  const failed = (studied: typeof after30, of: "failedLearned" | "failedAssumed") =>
    studied.reduce((sum, one) => sum + one[of], 0);
  // Of 160 and 80 loads.
  expect(failed(after30, "failedAssumed")).toBeGreaterThan(30);
  expect(failed(after30, "failedLearned")).toBe(0);
  expect(failed(after100, "failedAssumed")).toBeGreaterThan(30);
  expect(failed(after100, "failedLearned")).toBeLessThanOrEqual(2);
});

test("a large uptake that few loads cannot show makes the factor on times as doubtful as it is", () => {
  const studied = seeds.map((seed) =>
    study(batch, seed, 10, { uptakePerDm2: 0.25 * Math.exp(0.7 * seeded(seed + 31)()) }),
  );
  expect(scores(studied).find(({ name }) => name === "timeFactor")!.holds).toBeGreaterThanOrEqual(0.85);
});

test("a log that cannot tell a figure says so", () => {
  for (const { told } of toldNevertheless(seeds.map((seed) => cannotTell(batch, seed, 30))))
    expect(told).toBeLessThanOrEqual(0.1);
});

test("lots that move the colour are named, lots that do not are not", () => {
  expect(share(seeds.map((seed) => lotNamed(batch, seed, [0, 0, 2.6])))).toBeGreaterThanOrEqual(0.9);
  expect(share(seeds.map((seed) => lotNamed(batch, seed, [0, 0.1, 0.1])))).toBeLessThanOrEqual(0.1);
});

test("where the log teaches nothing there is nothing to paste, and the next plan is the same byte for byte", () => {
  const planned = (of: typeof batch): string => JSON.stringify(planBatch(of, shared));
  const before = planned(batch);
  let taught = 0;
  for (const seed of seeds) {
    const random = seeded(seed);
    // Every second workshop reads no colour and logs no water.
    const blind = seed % 2 === 0;
    const { rows } = work(batch, drawnTruth(random, batch), random, {
      loads: 12,
      blind,
      withoutWater: blind,
    });
    const reviewed = reviewLog(batch, rows, shared);
    if (!reviewed.ok) throw new Error(JSON.stringify(reviewed.faults));
    const learned = learn(batch, rows);
    expect(reviewed.value.paste === "").toBe(!learned.teaches);
    expect(planned(withLearned(batch, learned)) === before).toBe(!learned.teaches);
    if (blind) expect(learned.teaches).toBe(false);
    if (learned.teaches) taught++;
  }
  expect(taught).toBeGreaterThan(0);
});
