import { expect, test } from "vitest";
import { temperatureAction } from "../../../src/log/review/actions.js";
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

test("from the third reading on a slow bath is dipped longer", () => {
  const actions = (loads: number) => {
    const reviewed = reviewLog(batch, rowsOf({ ...usual, timeFactor: 1.3 }, loads), shared);
    return reviewed.ok ? reviewed.value : undefined;
  };
  expect(actions(1)!.actions).toEqual([]);
  const after = actions(4)!;
  const factor = Number(/timeFactor: ([\d.]+)/.exec(after.paste)![1]);
  expect(factor).toBeGreaterThan(1.15);
  expect(factor).toBeLessThan(1.45);
});

test("a bath that was cool three times is to be brought to its temperature, one within a kelvin is left alone", () => {
  const loads = (celsius: number) =>
    rowsOf(usual, 4).map((row): LogRow => (row.event === "load" ? { ...row, celsius } : row));
  expect(temperatureAction(loads(bath.dye.celsius - 0.9), bath)).toEqual([]);
  expect(temperatureAction(loads(bath.dye.celsius - 2), bath)).toEqual([
    `six: bring the bath to ${bath.dye.celsius} °C; the last 3 loads were dipped at ${(bath.dye.celsius - 2).toFixed(1)} °C`,
  ]);
});
