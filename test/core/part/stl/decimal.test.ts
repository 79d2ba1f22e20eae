import fc from "fast-check";
import { expect, test } from "vitest";
import { parseDecimal } from "../../../../src/core/part/stl/decimal.js";

const read = (text: string): number => {
  const bytes = new TextEncoder().encode(`x ${text} y`);
  return parseDecimal(bytes, 2, bytes.length - 2);
};

test("parseDecimal returns what Number returns, to the last bit, for any number as text", () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: 0, max: 20 }),
      (value, digits) => {
        for (const text of [
          String(value),
          value.toExponential(),
          value.toExponential(digits),
          value.toPrecision(digits + 1),
          Math.abs(value) < 1e15 ? value.toFixed(digits) : "0",
        ])
          expect(Object.is(read(text), Number(text))).toBe(true);
      },
    ),
    { numRuns: 20_000, seed: 3 },
  );
});

test("parseDecimal reads forms that number literals may not take", () => {
  for (const [text, value] of [
    ["+1", 1],
    [".5", 0.5],
    ["5.", 5],
    ["-0", -0],
    ["007", 7],
    ["1E+02", 100],
    ["1e-400", 0],
    ["0.000000000000000000000000000001e30", 1],
    ["100000000000000000000000000000e-29", 1],
  ] as const)
    expect(read(text)).toBe(value);
});

test("parseDecimal returns NaN for anything that is not a decimal number", () => {
  for (const text of [
    "",
    "-",
    ".",
    "e5",
    "1e",
    "1e+",
    "1,5",
    "0x1",
    "1_0",
    "inf",
    "nan",
    "1.2.3",
    "1e5.5",
    "--1",
  ])
    expect(read(text)).toBeNaN();
});
