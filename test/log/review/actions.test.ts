import { expect, test } from "vitest";
import { temperatureAction, timeAction } from "../../../src/log/review/actions.js";
import type { LearnedDye } from "../../../src/log/review/learn-dye.js";
import { reviewLog } from "../../../src/log/review/review.js";
import type { LogRow } from "../../../src/log/row/log-row.js";
import { seeded, shared, type Truth, work, workshopBatch } from "./workshop.js";

const batch = await workshopBatch();
const bath = batch.baths[0]!;
const usual: Truth = {
  timeFactor: 1,
  uptakePerDm2: 0.03,
  dragOutMlPerDm2: 0.8,
  strengthExponent: 1.5,
  activationEnergyJPerMol: bath.dye.activationEnergyJPerMol,
  evaporation: 1,
};
const rowsOf = (truth: Truth, loads: number): readonly LogRow[] =>
  work(batch, truth, seeded(5), { loads }).rows;

test("a slow bath is dipped longer, a usual one as before", () => {
  const reviewed = (timeFactor: number) => {
    const review = reviewLog(batch, rowsOf({ ...usual, timeFactor }, 4), shared);
    if (!review.ok) throw new Error(JSON.stringify(review.faults));
    return review.value;
  };
  const slow = reviewed(1.3);
  const [, factor, dip, sheet] =
    /^brick: multiply its times by ([\d.]+): dip (\d+) s where the sheet says (\d+) s/.exec(
      slow.actions[0]!,
    )!;
  expect(slow.paste).toContain(`timeFactor: ${factor} `);
  expect(Number(factor)).toBeGreaterThan(1.15);
  expect(Number(factor)).toBeLessThan(1.45);
  // The factor is written to 0.01, the dip to a second.
  expect(Math.abs(Number(dip) - Number(sheet) * Number(factor))).toBeLessThan(0.5 + 0.005 * Number(sheet));
  expect(reviewed(1)).toMatchObject({ actions: [], paste: "" });
});

test("a factor beyond what a dye or a bath explains is to be doubted first", () => {
  const said = (timeFactor: number) =>
    timeAction("brick", {
      last: undefined,
      toUse: { ...usual, timeFactor },
      foreseen: [{ reading: { row: { seconds: 60 } } }],
    } as unknown as LearnedDye)[0];
  for (const factor of [0.41, 2.49]) expect(said(factor)).toMatch(/^brick: multiply its times by [\d.]+:/);
  for (const factor of [0.39, 2.51])
    expect(said(factor)).toMatch(/^brick: its readings ask for [\d.]+ times as long .* before you use/);
});

test("a bath that was cool three times is to be brought to its temperature, one within a kelvin is left alone", () => {
  const loads = (celsius: number) =>
    rowsOf(usual, 4).map((row): LogRow => (row.event === "load" ? { ...row, celsius } : row));
  expect(temperatureAction(loads(bath.dye.celsius - 0.9), bath)).toEqual([]);
  expect(temperatureAction(loads(bath.dye.celsius - 2), bath)).toEqual([
    `six: bring the bath to ${bath.dye.celsius} °C; the last 3 loads were dipped at ${(bath.dye.celsius - 2).toFixed(1)} °C`,
  ]);
});
