// Outside implementations, development dependencies only: culori, colorjs.io, color-diff, delta-e, color-convert.
import convert from "color-convert";
import Color from "colorjs.io";
import { converter, differenceCie76, differenceCie94, differenceCiede2000, differenceCmc } from "culori";
import { expect, test } from "vitest";
import {
  cie76,
  cie94,
  cie94Textile,
  cmc11,
  cmc21,
} from "../../src/core/colour/difference/cie-differences.js";
import { ciede2000, ciede2000Pairs, ciede2000Textile } from "../../src/core/colour/difference/ciede2000.js";
import { srgbToLab } from "../../src/core/colour/screen/srgb.js";
import type { Lab } from "../../src/core/model/colour.js";
import { randomNumbers } from "../tools/random-numbers.js";

const random = randomNumbers(3);
const colour = (): Lab => [100 * random(), 200 * random() - 100, 200 * random() - 100];
const pairs = Array.from({ length: 10_000 }, () => [colour(), colour()] as const);
const culori = ([l, a, b]: Lab) => ({ mode: "lab65", l, a, b }) as const;
const colorjs = ([l, a, b]: Lab) => new Color("lab", [l, a, b]);
const worst = (one: (a: Lab, b: Lab) => number, other: (a: Lab, b: Lab) => number): number =>
  pairs.reduce((most, [a, b]) => Math.max(most, Math.abs(one(a, b) - other(a, b))), 0);

test("ciede2000 agrees with culori and colorjs.io on 10,000 random pairs to 1e-9", () => {
  const outside = differenceCiede2000();
  expect(worst(ciede2000, (a, b) => outside(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(ciede2000, (a, b) => colorjs(a).deltaE2000(colorjs(b)))).toBeLessThan(1e-9);
});

test("ciede2000Textile agrees with culori and colorjs.io with kL = 2 on 10,000 random pairs to 1e-9", () => {
  const outside = differenceCiede2000(2, 1, 1);
  expect(worst(ciede2000Textile, (a, b) => outside(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(ciede2000Textile, (a, b) => colorjs(a).deltaE2000(colorjs(b), { kL: 2 }))).toBeLessThan(1e-9);
});

test("ciede2000Pairs returns for 10,000 random pairs what ciede2000 returns", () => {
  const many = ciede2000Pairs(
    Float64Array.from(pairs.flatMap(([a, b]) => [...a, ...b])),
    new Float64Array(pairs.length),
  );
  pairs.forEach(([a, b], i) => {
    expect(many[i]).toBe(ciede2000(a, b));
  });
});

test("ciede2000 agrees with culori where chroma is nothing, hues are equal or nearly opposite", () => {
  const outside = differenceCiede2000();
  for (let i = 0; i < 2000; i++) {
    const [L, a, b] = colour();
    const k = 2 * random();
    for (const other of [
      [L, 0, 0],
      [L + 1, k * a, k * b],
      [L, -k * a, -k * b * (1 + 1e-6)],
      [L, -k * a * (1 + 1e-4), -k * b],
    ] as const)
      expect(Math.abs(ciede2000([L, a, b], other) - outside(culori([L, a, b]), culori(other)))).toBeLessThan(
        1e-9,
      );
  }
});

test("the older differences agree with culori, and CMC with colorjs.io, on 10,000 random pairs to 1e-9", () => {
  const with76 = differenceCie76();
  const with94 = differenceCie94();
  const with94Textile = differenceCie94(2, 0.048, 0.014);
  const with11 = differenceCmc(1, 1);
  const with21 = differenceCmc(2, 1);
  expect(worst(cie76, (a, b) => with76(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(cie94, (a, b) => with94(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(cie94Textile, (a, b) => with94Textile(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(cmc11, (a, b) => with11(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(cmc21, (a, b) => with21(culori(a), culori(b)))).toBeLessThan(1e-9);
  expect(worst(cmc21, (a, b) => colorjs(a).deltaECMC(colorjs(b)))).toBeLessThan(1e-9);
});

test("srgbToLab agrees with culori to 1e-9, while color-convert's own CIELAB is off by up to 0.011", () => {
  const outside = converter("lab65");
  let off = 0;
  let offConvert = 0;
  for (let i = 0; i < 10_000; i++) {
    const [r, g, b] = [random(), random(), random()];
    const ours = srgbToLab([r, g, b]);
    const theirs = outside({ mode: "rgb", r, g, b });
    const rounded = convert.rgb.lab.raw([255 * r, 255 * g, 255 * b]);
    off = Math.max(off, ...[theirs.l, theirs.a, theirs.b].map((value, k) => Math.abs(value - ours[k]!)));
    offConvert = Math.max(offConvert, ...rounded.map((value, k) => Math.abs(value - ours[k]!)));
  }
  expect(off).toBeLessThan(1e-9);
  // The reason why color-convert stays at the edges.
  expect(offConvert).toBeGreaterThan(0.01);
  expect(offConvert).toBeLessThan(0.012);
});
