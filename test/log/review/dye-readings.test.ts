import { expect, test } from "vitest";
import type { Lab } from "../../../src/core/model/batch.js";
import { hasCurve } from "../../../src/core/uptake/shade/dye-model.js";
import { readingOf } from "../../../src/log/review/dye-readings.js";
import { reviewLog } from "../../../src/log/review/review.js";
import type { LoadRow, LogRow } from "../../../src/log/row/log-row.js";
import { drawnTruth, seeded, shared, work, workshopBatch } from "./workshop.js";

const batch = await workshopBatch();
const fitted = shared.dyes.fit(batch.baths[0]!.dye, batch.handling);
if (!fitted.ok || !hasCurve(fitted.value.model)) throw new Error("no curve");
const { model } = fitted.value;
const rows = work(batch, drawnTruth(seeded(1), batch), seeded(2), { loads: 6 }).rows;
const load = rows.find((row): row is LoadRow => row.event === "load")!;
const read = (lab: Lab) => readingOf(model, batch, { ...load, lab });
const white = batch.bases.find(({ name }) => name === "white")!.lab!;

test("a colour of the dye tells a time, one that is 10 CIEDE2000 from all of them nothing", () => {
  const [L, a, b] = load.lab!;
  const greener = (by: number) => read([L, a - by, b]);
  let [near, far] = [0, 60];
  expect(greener(near)).toMatchObject({ ok: true, faults: [], value: { row: { seconds: load.seconds } } });
  while (far - near > 1e-6) {
    const middle = (near + far) / 2;
    if (greener(middle).faults.length > 0) far = middle;
    else near = middle;
  }
  expect(greener(near)).toMatchObject({ ok: true, faults: [] });
  const { faults, ...rest } = greener(far);
  expect(rest).toEqual({ ok: true, value: undefined });
  expect(faults[0]).toMatchObject({ code: "log-another-colour", severity: "warning" });
  expect(faults[0]!.message).toBe(
    `row ${load.row}, column L: the colour is 10.0 CIEDE2000 from any that dye "brick" gives on this base: it teaches nothing`,
  );
});

test("the colour of the bare part is no reading of a dip", () => {
  expect(read(white).faults).toMatchObject([{ code: "log-bare-colour" }]);
});

test("readings that are left out teach nothing, and the review says so of each", () => {
  const green: Lab = [55, -40, 20];
  const strange = rows.map((row): LogRow => (row.event === "load" ? { ...row, lab: green } : row));
  const review = reviewLog(batch, strange, shared);
  if (!review.ok) throw new Error(JSON.stringify(review.faults));
  expect(review.faults.map(({ code }) => code)).toEqual(
    Array.from({ length: 6 }, () => "log-another-colour"),
  );
  expect(review.value.actions).toEqual([]);
  // What was poured still tells what was carried out.
  expect(review.value.paste).toMatch(/^handling:\n {2}dragOut: [^\n]+\n$/);
  expect(Object.values(review.value.estimates)[0]).toMatchObject({
    readings: 0,
    timeFactor: { value: 1, told: false },
  });
});
