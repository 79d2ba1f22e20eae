import { expect, test } from "vitest";
import type { Evidence } from "../../../../src/core/bath/evidence/forms.js";
import { logDeviation } from "../../../../src/core/bath/evidence/observation.js";
import { type Reconciled, reconcile, usualAssumed } from "../../../../src/core/bath/evidence/reconcile.js";
import { spentStrength } from "../../../../src/core/bath/evidence/spent-strength.js";
import { deviationOfFactor } from "../../../../src/core/maths/sampling/log-normal.js";
import { normal, seeded } from "../../uptake/shade/invented-dyes.js";

function of(evidence: readonly Evidence[]): Reconciled {
  const outcome = reconcile(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
}

const weighing = (wetG: number, relative = 0.2): Evidence => ({
  kind: "weighing",
  dryG: 200,
  wetG,
  areaDm2: 10,
  relative,
});
const purchases = (dyePerDm2: number, relative = 0.15): Evidence => ({
  kind: "purchases",
  bought: 1000 * dyePerDm2 + 250,
  left: 200,
  dumped: 50,
  areaDm2: 1000,
  depth: 0.6,
  dyePerL: 100,
  relative,
});

test("without evidence the assumed figures come back as they are", () => {
  const { uptakePerDm2, dragOutMlPerDm2, observations } = of([]);
  expect(uptakePerDm2.value).toBeCloseTo(0.03, 12);
  // A quarter to four times in 95 of 100 cases: ln 4 / 1.959964.
  expect(Math.log(uptakePerDm2.factor)).toBeCloseTo(0.7073059, 6);
  expect(uptakePerDm2.interval95[0]).toBeCloseTo(0.03 / 4, 9);
  expect(uptakePerDm2.interval95[1]).toBeCloseTo(0.03 * 4, 9);
  expect(uptakePerDm2.assumedShare).toBeCloseTo(1, 9);
  expect(dragOutMlPerDm2.value).toBeCloseTo(0.8, 12);
  expect(dragOutMlPerDm2.interval95[0]).toBeCloseTo(0.8 / 3, 9);
  expect(dragOutMlPerDm2.interval95[1]).toBeCloseTo(0.8 * 3, 9);
  expect(observations.map(({ kind }) => kind)).toEqual(["assumed-uptake", "assumed-drag-out"]);
});

test("one weighing moves the drag-out by the weights of the two variances and leaves κ alone", () => {
  const { uptakePerDm2, dragOutMlPerDm2 } = of([weighing(206.2)]);
  const [assumed, seen] = [deviationOfFactor(3) ** -2, logDeviation(0.2) ** -2];
  const middle = (assumed * Math.log(0.8) + seen * Math.log(0.62)) / (assumed + seen);
  expect(Math.log(dragOutMlPerDm2.value)).toBeCloseTo(middle, 10);
  expect(Math.log(dragOutMlPerDm2.factor)).toBeCloseTo((assumed + seen) ** -0.5, 8);
  expect(dragOutMlPerDm2.assumedShare).toBeCloseTo(assumed / (assumed + seen), 8);
  expect(uptakePerDm2.value).toBeCloseTo(0.03, 10);
  expect(uptakePerDm2.assumedShare).toBeCloseTo(1, 8);
});

/** Precise evidence of each kind for κ = 0.05 and a drag-out of 0.5 mL/dm². */
const truth = { uptake: 0.05, dragOut: 0.5 };
const spent = spentStrength({
  volumeL: 6,
  dyePerL: 100,
  areaDm2: 2500,
  takenUpPerDm2: truth.uptake * 0.6,
  dragOutLPerDm2: truth.dragOut / 1000,
  evaporationLPerDm2: 0.001,
  refill: "water",
});
const exact: readonly Evidence[] = [
  { ...weighing(205, 1e-4) },
  { ...purchases(truth.uptake * 0.6 + truth.dragOut * 0.1, 1e-4) },
  {
    kind: "yield",
    dye: 1000,
    areaDm2: (0.8 * 1000) / (truth.uptake * 1 + truth.dragOut * 0.1 * 0.9),
    depth: 1,
    usedShare: 0.8,
    dyePerL: 100,
    strength: 0.9,
    relative: 1e-4,
  },
  {
    kind: "slower",
    strength: spent,
    strengthError: 1e-4,
    areaDm2: 2500,
    depth: 0.6,
    dyePerL: 100,
    volumeL: 6,
    evaporatedL: 2.5,
    refill: "water",
  },
];

test("precise evidence of every kind, alone with a weighing or all together, gives the figures it was made from", () => {
  for (const evidence of [exact, ...exact.slice(1).map((one) => [exact[0]!, one])]) {
    const { uptakePerDm2, dragOutMlPerDm2, observations, widened } = of(evidence);
    expect(Math.abs(uptakePerDm2.value / truth.uptake - 1)).toBeLessThan(1e-4);
    expect(Math.abs(dragOutMlPerDm2.value / truth.dragOut - 1)).toBeLessThan(1e-4);
    expect(uptakePerDm2.assumedShare).toBeLessThan(1e-3);
    expect(observations.some(({ disagrees }) => disagrees)).toBe(false);
    expect(widened).toBe(1);
  }
});

test("purchases alone leave κ and drag-out open to each other, and each estimate says what is still assumed", () => {
  const { uptakePerDm2, dragOutMlPerDm2 } = of([purchases(0.08, 0.01)]);
  expect(0.6 * uptakePerDm2.value + 0.1 * dragOutMlPerDm2.value).toBeCloseTo(0.08, 3);
  expect(uptakePerDm2.assumedShare).toBeGreaterThan(0.2);
  expect(dragOutMlPerDm2.assumedShare).toBeLessThan(0.2);
});

test("liquor of 0.8 g/mL that weighs 4 g is 5 mL", () => {
  const light = { ...weighing(204, 1e-4), gPerMl: 0.8 } as Evidence;
  expect(of([light]).dragOutMlPerDm2.value).toBeCloseTo(0.5, 5);
});

test("the standardised residual of one of two weighings is their distance over the deviation of its prediction", () => {
  const { observations } = of([weighing(204, 0.1), weighing(210, 0.1)]);
  const variance = logDeviation(0.1) ** 2;
  const assumed = deviationOfFactor(3) ** 2;
  const others = 1 / (1 / variance + 1 / assumed);
  const foretold = others * (Math.log(1) / variance + Math.log(0.8) / assumed);
  expect(observations[0]!.standardised).toBeCloseTo(
    (Math.log(0.4) - foretold) / Math.sqrt(variance + others),
    5,
  );
  expect(observations[0]!.disagrees).toBe(true);
});

test("evidence disagrees beyond two standard deviations from the rest", () => {
  const disagrees = (deviations: number): boolean => {
    const apart = deviations * Math.hypot(logDeviation(0.2), deviationOfFactor(3));
    const { observations } = of([weighing(200 + 10 * 0.8 * Math.exp(apart))]);
    expect(observations[0]!.standardised).toBeCloseTo(deviations, 5);
    return observations[0]!.disagrees;
  };
  expect([1.99, 2.01, -1.99, -2.01].map(disagrees)).toEqual([false, true, false, true]);
});

test("evidence that disagrees is named, and the deviations are widened by the root of χ² over its freedom", () => {
  const outcome = reconcile([weighing(205, 0.1), weighing(204.6, 0.1), weighing(212, 0.1)]);
  expect(outcome.faults.map(({ code, path }) => [code, path])).toContainEqual(["evidence-disagrees", [2]]);
  if (!outcome.ok) return;
  const { widened, chiSquare, degreesOfFreedom, dragOutMlPerDm2 } = outcome.value;
  expect(degreesOfFreedom).toBe(3);
  expect(widened).toBeCloseTo(Math.sqrt(chiSquare / 3), 10);
  expect(widened).toBeGreaterThan(2);
  const plain = (3 / logDeviation(0.1) ** 2 + 1 / deviationOfFactor(3) ** 2) ** -0.5;
  expect(Math.log(dragOutMlPerDm2.factor)).toBeCloseTo(plain * widened, 7);
});

test("evidence that tells nothing is refused with its place", () => {
  const bad: readonly Evidence[] = [
    weighing(199),
    { ...purchases(0.08), areaDm2: 0 } as Evidence,
    { ...purchases(0.08), left: 900 } as Evidence,
    { ...weighing(205), relative: 0 },
  ];
  const outcome = reconcile(bad);
  expect(outcome.ok).toBe(false);
  expect(outcome.faults.map(({ path }) => path)).toEqual([
    [0, "wet"],
    [1, "area"],
    [2, "bought"],
    [3, "relative"],
  ]);
});

test("a bath that would have run dry under any drag-out is refused", () => {
  const slower = { ...exact[3]!, refill: "none", evaporatedL: 7 } as Evidence;
  expect(reconcile([slower]).faults.map(({ code }) => code)).toEqual(["evidence-dry"]);
});

test("of 600 invented workshops the 95 % intervals hold the truth in 92 to 99 %", () => {
  const random = seeded(6);
  const draw = ({ value, deviation }: { value: number; deviation: number }): number =>
    value * Math.exp(normal(random) * deviation);
  const seen = (value: number, relative: number) => draw({ value, deviation: logDeviation(relative) });
  let [uptakes, dragOuts] = [0, 0];
  const workshops = 600;
  for (let i = 0; i < workshops; i++) {
    const uptake = draw(usualAssumed.uptakePerDm2);
    const dragOut = draw(usualAssumed.dragOutMlPerDm2);
    const found = of([
      weighing(200 + 10 * seen(dragOut, 0.2)),
      purchases(seen(0.6 * uptake + 0.1 * dragOut, 0.15)),
      {
        kind: "yield",
        dye: 1000,
        areaDm2: 1000 / seen(0.9 * uptake + 0.1 * dragOut, 0.5),
        depth: 0.9,
        dyePerL: 100,
      },
    ]);
    const holds = ([low, high]: readonly [number, number], value: number) => low <= value && value <= high;
    if (holds(found.uptakePerDm2.interval95, uptake)) uptakes++;
    if (holds(found.dragOutMlPerDm2.interval95, dragOut)) dragOuts++;
  }
  for (const count of [uptakes, dragOuts]) {
    expect(count / workshops).toBeGreaterThan(0.92);
    expect(count / workshops).toBeLessThan(0.99);
  }
});
