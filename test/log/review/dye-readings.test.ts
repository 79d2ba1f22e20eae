import { expect, test } from "vitest";
import type { Lab } from "../../../src/core/model/batch.js";
import { hasCurve } from "../../../src/core/uptake/shade/dye-model.js";
import { labAfter } from "../../../src/core/uptake/swatches/shade-curve.js";
import { readingOf } from "../../../src/log/review/dye-readings.js";
import { reviewLog } from "../../../src/log/review/review.js";
import type { LoadRow, LogRow } from "../../../src/log/row/log-row.js";
import { readText } from "../../batch-file/read.js";
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

test("a thermometer makes the time of a reading uncertain by 2 %, beside the reading and the timing", () => {
  const untimed = { ...batch, handling: { ...batch.handling, timingSeconds: 0 } };
  const reading = readingOf(model, untimed, load);
  if (!reading.ok || reading.value === undefined) throw new Error("no reading");
  const { deviation, swatchDeviation } = reading.value;
  expect(Math.sqrt(deviation ** 2 - swatchDeviation ** 2)).toBeCloseTo(0.02, 9);
});

test("the colour of the bare part is no reading of a dip", () => {
  expect(read(white).faults).toMatchObject([{ code: "log-bare-colour" }]);
});

test("the colour of a dip of over half a second tells a time, that of a shorter one is bare", () => {
  const after = (seconds: number) => read(labAfter(model.chosen.curve, seconds));
  expect(after(0.55)).toMatchObject({ faults: [], value: { logFresh: expect.closeTo(Math.log(0.55), 2) } });
  expect(after(0.45).faults).toMatchObject([{ code: "log-bare-colour" }]);
});

test("a colour that hardly moves with the time tells none: less than 0.1 CIEDE2000 with ln of it", async () => {
  const { batch: ofFull } = await readText(`
batch: full
bases: { white: { lab: [93.0, -0.3, 0.6] } }
dyes:
  full:
    dilution: 1:9
    temperature: 80 °C
    base: white
    law: first-order
    swatches:
      - { time: 10 s, lab: [63.6, 29.4, 8.1] }
      - { time: 20 s, lab: [52.2, 34.0, 10.1] }
      - { time: 120 s, lab: [48.2, 36.9, 12.2] }
`);
  const full = ofFull!.dyes[0]!;
  const known = shared.dyes.fit(full, ofFull!.handling);
  if (!known.ok || !hasCurve(known.value.model)) throw new Error("no curve");
  const its = known.value.model;
  const after = (seconds: number) =>
    readingOf(its, ofFull!, { ...load, lab: labAfter(its.chosen.curve, seconds) });
  let [early, late] = [140, 200];
  while (late - early > 1e-4) {
    const middle = (early + late) / 2;
    const reading = after(middle);
    if (reading.ok && reading.value === undefined) late = middle;
    else early = middle;
  }
  expect(after(early)).toMatchObject({ faults: [], value: { deltaE00PerLogTime: expect.closeTo(0.1, 3) } });
  expect(after(late)).toEqual({ ok: true, value: undefined, faults: [] });
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
