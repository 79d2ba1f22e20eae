import { expect, test } from "vitest";
import { curveWeights } from "../../../../src/core/colour/spectrum/weights.js";
import type { Lab } from "../../../../src/core/model/batch.js";
import { mixDye } from "../../../../src/core/recipe/mixture/mix-dye.js";
import { mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { labAfter } from "../../../../src/core/uptake/swatches/shade-curve.js";
import { someDyes } from "../some-dyes.js";

const dyes = someDyes(1, 4);

/** The laws, their inverses, Kubelka-Munk and CIELAB written out once more, apart from those of the program. */
const laws = {
  "first-order": [(x: number) => 1 - Math.exp(-x), (g: number) => -Math.log(1 - g)],
  "second-order": [(x: number) => x / (1 + x), (g: number) => g / (1 - g)],
  parabolic: [(x: number) => Math.sqrt(x), (g: number) => g * g],
  "cegarra-puente": [(x: number) => Math.sqrt(1 - Math.exp(-x)), (g: number) => -Math.log(1 - g * g)],
} as const;

const f = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);

function labOf(ks: readonly number[]): Lab {
  const { x, y, z, white } = curveWeights({ illuminant: "D65", observer: 10 });
  const r = ks.map((value) => 1 + value - Math.sqrt(value * value + 2 * value));
  const sum = (weights: Float64Array): number =>
    r.reduce((total, value, i) => total + value * weights[i]!, 0);
  const [fx, fy, fz] = [f(sum(x) / white[0]), f(sum(y) / white[1]), f(sum(z) / white[2])];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

function independently(which: readonly number[], strengths: readonly number[], seconds: number): Lab {
  const parts = which.map((i, n) => {
    const { curve } = dyes[i]!.model.chosen;
    const [g, inverse] = laws[curve.law];
    const whole = g(curve.ratePerSecond * curve.referenceSeconds);
    const depth = (strengths[n]! * g(curve.ratePerSecond * seconds)) / whole;
    const own = curve.law === "parabolic" ? depth * whole : Math.min(depth * whole, 1 - 1e-15);
    return { curve, depth, sameColourSeconds: inverse(own) / curve.ratePerSecond };
  });
  const base = Array.from(parts[0]!.curve.set.base.ks);
  const ks = base.map((value, w) =>
    parts.reduce((sum, { curve, depth }) => sum + curve.absorption[w]! * depth, value),
  );
  const added = parts.map(({ curve, depth }) => depth * curve.absorption.reduce((a, b) => a + b, 0));
  const all = added.reduce((a, b) => a + b, 0);
  const lab = labOf(ks) as unknown as number[];
  parts.forEach(({ curve, depth, sameColourSeconds }, i) => {
    const alone = labOf(base.map((value, w) => value + curve.absorption[w]! * depth));
    const seen = labAfter(curve, sameColourSeconds);
    for (let axis = 0; axis < 3; axis++) lab[axis]! += (added[i]! / all) ** 2 * (seen[axis]! - alone[axis]!);
  });
  return lab as unknown as Lab;
}

test("mixedLab returns what the formulas give, computed independently, to 1e-9", () => {
  for (const [which, strengths, seconds] of [
    [[0, 1], [0.3, 0.2], 60],
    [[0, 1, 2], [0.5, 0.07, 0.2], 60],
    [[1, 2, 3], [0.01, 0.9, 0.4], 45],
    [[3, 0, 2], [0.2, 0.3, 0.1], 120],
  ] as const) {
    const mixture = mixtureOf(
      which.map((i) => dyes[i]!),
      seconds,
    );
    const lab = mixedLab(mixture, strengths);
    independently(which, strengths, seconds).forEach((value, axis) => {
      expect(Math.abs(lab[axis]! - value)).toBeLessThan(1e-9);
    });
  }
});

test("one dye of strength 1 is that dye's shade curve", () => {
  for (const dye of dyes) {
    const { curve } = dye.model.chosen;
    const lab = mixedLab(mixtureOf([dye], 60), [1]);
    labAfter(curve, 60).forEach((value, axis) => {
      expect(lab[axis]).toBeCloseTo(value, 9);
    });
  }
});

test("a bath without dye is the base", () => {
  mixedLab(mixtureOf(dyes, 60), [0, 0, 0, 0]).forEach((value, axis) => {
    expect(value).toBeCloseTo(dyes[0]!.model.chosen.curve.set.base.lab[axis]!, 6);
  });
});

test("what trials corrected multiplies a depth and moves the colour", () => {
  const pair = dyes.slice(0, 2);
  const correction = { factors: new Map([[pair[0]!.name, 1.2]]), offset: [1, -2, 0.5] as const };
  const corrected = mixedLab(mixtureOf(pair, 60, correction), [0.3, 0.2]);
  mixedLab(mixtureOf(pair, 60), [0.36, 0.2]).forEach((value, axis) => {
    expect(corrected[axis]).toBeCloseTo(value + correction.offset[axis]!, 9);
  });
});

test("the bath has the lowest of the dyes' own temperatures", () => {
  const [first, second] = dyes as [(typeof dyes)[0], (typeof dyes)[0]];
  const cooler = { ...second, model: { ...second.model, dye: { ...second.model.dye, celsius: 70 } } };
  expect(mixtureOf([first, cooler], 60).dip.celsius).toBe(70);
  expect(mixtureOf([first, cooler], 60).depthAtOne[0]).toBeLessThan(mixtureOf([first], 60).depthAtOne[0]!);
});

test("a dye with one swatch cannot be mixed, and the fault says what to do", () => {
  const { model } = dyes[0]!;
  const read = mixDye({ ...model, chosen: null }, undefined);
  expect(read.ok).toBe(false);
  expect(read.faults[0]).toMatchObject({ code: "mix-without-curve", path: ["dyes", "dye 1"] });
});
