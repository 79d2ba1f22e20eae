import { expect, test } from "vitest";
import { chromaticityToXyz } from "../../src/core/colour/chromaticity.js";
import { cieWhiteness, yellowness } from "../../src/core/colour/whiteness.js";

const d65 = (observer: 2 | 10) => ({ illuminant: "D65", observer }) as const;

test("yellowness returns 0 within 0.01 for the published whites, which checks its constants", () => {
  // source: astmE308 white points under D65
  expect(Math.abs(yellowness([95.047, 100, 108.883], d65(2))!)).toBeLessThan(0.01);
  expect(Math.abs(yellowness([94.811, 100, 107.304], d65(10))!)).toBeLessThan(0.01);
});

test("cieWhiteness returns 100 and tint 0 for the perfect diffuser", () => {
  // source: cie15 nominal whites x 0.3127, y 0.3290 (2°) and x 0.3138, y 0.3310 (10°)
  for (const [observer, x, y] of [
    [2, 0.3127, 0.329],
    [10, 0.3138, 0.331],
  ] as const) {
    const { whiteness, tint, valid } = cieWhiteness(chromaticityToXyz([x, y], 100), d65(observer))!;
    expect(whiteness).toBeCloseTo(100, 9);
    expect(tint).toBeCloseTo(0, 9);
    expect(valid).toBe(true);
  }
});

test("cieWhiteness counts 8 points for 0.01 in x, 17 for 0.01 in y, and tint by the observer", () => {
  // source: cie15 coefficients 800 and 1700; 1000 (2°), 900 (10°) and 650
  const at = (observer: 2 | 10, x: number, y: number) =>
    cieWhiteness(chromaticityToXyz([x, y], 90), d65(observer))!;
  expect(at(2, 0.3027, 0.329).whiteness).toBeCloseTo(98, 9);
  expect(at(2, 0.3127, 0.319).whiteness).toBeCloseTo(107, 9);
  expect(at(2, 0.3027, 0.329).tint).toBeCloseTo(10, 9);
  expect(at(10, 0.3038, 0.331).tint).toBeCloseTo(9, 9);
  expect(at(10, 0.3138, 0.321).tint).toBeCloseTo(-6.5, 9);
});

/** Under D65 and 2° a colour of lightness Y with this whiteness and tint: the two formulas solved for x and y. */
const colourOf = (Y: number, whiteness: number, tint: number) => {
  const dy = (1000 * (whiteness - Y) - 800 * tint) / (1700 * 1000 + 800 * 650);
  return chromaticityToXyz([0.3127 - (tint + 650 * dy) / 1000, 0.329 - dy], Y);
};

test.each([
  [90, 90, -3.99, true],
  [90, 90, -4.01, false],
  [90, 90, 1.99, true],
  [90, 90, 2.01, false],
  [90, 40.1, 0, true],
  [90, 39.9, 0, false],
  [90, 169.9, 0, true],
  [90, 170.1, 0, false],
])("cieWhiteness for Y %d, whiteness %d and tint %d is valid: %s", (Y, W, T, valid) => {
  // source: cie15ed3 limits 40 < W < 5 Y - 280 and -4 to 2 for the tint
  const found = cieWhiteness(colourOf(Y, W, T), d65(2))!;
  expect([found.whiteness, found.tint]).toEqual([expect.closeTo(W, 9), expect.closeTo(T, 9)]);
  expect(found.valid).toBe(valid);
});

test("cieWhiteness calls a colour invalid outside its limits and has none under another illuminant", () => {
  expect(cieWhiteness([40, 35, 20], d65(10))!.valid).toBe(false);
  expect(cieWhiteness(chromaticityToXyz([0.29, 0.3], 85), d65(2))!.valid).toBe(false);
  expect(cieWhiteness([95, 100, 107], { illuminant: "A", observer: 10 })).toBeUndefined();
  expect(cieWhiteness([0, 0, 0], d65(10))).toBeUndefined();
  expect(yellowness([95, 100, 107], { illuminant: "F11", observer: 10 })).toBeUndefined();
});
