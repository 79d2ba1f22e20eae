import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type KindName, kinds } from "../../../src/core/quantity/kinds.js";
import { parseDilution } from "../../../src/core/quantity/parse/parse-dilution.js";
import { parseQuantity } from "../../../src/core/quantity/parse/parse-quantity.js";
import { parseSurface } from "../../../src/core/quantity/parse/parse-surface.js";
import { dilutionPattern } from "../../../src/core/quantity/pattern/dilution-pattern.js";
import { numberUpTo } from "../../../src/core/quantity/pattern/number-up-to.js";
import { quantityPattern } from "../../../src/core/quantity/pattern/quantity-pattern.js";
import { surfacePattern } from "../../../src/core/quantity/pattern/surface-pattern.js";
import { number, quantityText, spaces, unitOf } from "./quantity-texts.js";

const names = Object.keys(kinds) as KindName[];
const whole = (pattern: string): RegExp => new RegExp(`^(?:${pattern})$`, "u");

describe.each(names)("the pattern of %s", (name) => {
  const pattern = whole(quantityPattern(name));

  test("matches every text that is read", () => {
    let read = 0;
    fc.assert(
      fc.property(quantityText(name), (text) => {
        const parsed = parseQuantity(name, text);
        if (parsed.ok) read++;
        return !parsed.ok || pattern.test(text);
      }),
      { numRuns: 500 },
    );
    expect(read).toBeGreaterThan(5);
  });

  test("matches no text without a unit, with a decimal comma or a unit of another kind", () => {
    const coded = new Set<string>();
    const plain = fc.integer({ min: 0, max: 2000 });
    const wrong = fc.oneof(
      fc.tuple(plain, spaces, fc.constantFrom(...names).chain(unitOf)).map((parts) => parts.join("")),
      fc.tuple(plain, unitOf(name)).map(([n, unit]) => `${n},5 ${unit}`),
      plain.map(String),
    );
    fc.assert(
      fc.property(wrong, (text) => {
        const [fault] = parseQuantity(name, text).faults;
        if (fault === undefined) return true;
        coded.add(fault.code);
        return (
          !["unit-missing", "unit-wrong", "unit-unknown", "decimal-comma"].includes(fault.code) ||
          !pattern.test(text)
        );
      }),
      { numRuns: 500 },
    );
    expect([...coded]).toEqual(expect.arrayContaining(["decimal-comma"]));
  });
});

test("a positive quantity is not matched where it is 0, and a share not above its limit", () => {
  for (const [name, text] of [
    ["volume", "0 L"],
    ["volume", "0.00 mL"],
    ["volume", " +0L"],
    ["mass", "0 g"],
  ] as const) {
    expect([text, whole(quantityPattern(name)).test(text)]).toEqual([text, true]);
    expect([text, whole(quantityPattern(name, { positive: true })).test(text)]).toEqual([text, false]);
  }
  for (const text of ["0.5 min", "0 min 30 s", "00.01 h", "10 s"])
    expect([text, whole(quantityPattern("time", { positive: true })).test(text)]).toEqual([text, true]);
  const share = whole(quantityPattern("percent", { most: 1 }));
  for (const text of ["100 %", "100.000 %", "0100%", "99.99 %", ".5 %", "5 % ± 200 %"])
    expect([text, share.test(text)]).toEqual([text, true]);
  for (const text of ["100.1 %", "101 %", "197 %", "1000 %"])
    expect([text, share.test(text)]).toEqual([text, false]);
});

test.each([95, 100, 500, 1000])("numberUpTo(%i) matches the numbers up to it and no others", (most) => {
  const pattern = whole(numberUpTo(most));
  const matches = Array.from({ length: 3 * most }, (_, i) => i).filter((n) => pattern.test(String(n)));
  expect(matches).toEqual(Array.from({ length: most + 1 }, (_, i) => i));
  fc.assert(
    fc.property(fc.double({ min: 0, max: 2 * most, noNaN: true }), (value) => {
      const text = value.toFixed(6);
      return pattern.test(text) === Number(text) <= most;
    }),
  );
  // As near to it as a double cannot tell.
  for (const text of [`${most}.00000000000000001`, `${most}.0`]) {
    expect(Number(text)).toBe(most);
    expect(pattern.test(text)).toBe(true);
  }
});

test("the pattern of a dilution matches every dilution that is read", () => {
  const forms = fc.oneof(
    fc.tuple(number, spaces, number).map(([dye, space, water]) => `${dye}${space}:${space}${water}`),
    fc
      .tuple(number, spaces, number, quantityText("percent"))
      .map(([dye, space, water, half]) => `${dye}${space}:${water} ±${half}`),
    quantityText("percent"),
    quantityText("massPerVolume"),
    quantityText("volumePerVolume"),
  );
  const pattern = whole(dilutionPattern());
  let read = 0;
  fc.assert(
    fc.property(forms, (text) => {
      const parsed = parseDilution(text);
      if (parsed.ok) read++;
      return !parsed.ok || pattern.test(text);
    }),
    { numRuns: 2000 },
  );
  expect(read).toBeGreaterThan(50);
  for (const text of ["0.1", "1/10", "1-9", "20 g", "150 %", "6 L", "1:9 kg"])
    expect([text, pattern.test(text)]).toEqual([text, false]);
});

test("the pattern of a surface matches every surface that is read", () => {
  const length = quantityText("length");
  const word = fc.constantFrom("diameter", "Diameter", "DIAM.", "dia", "ø", "Ø", "⌀");
  const forms = fc.oneof(
    quantityText("area"),
    fc.tuple(word, spaces, length).map((parts) => parts.join("")),
    fc.tuple(length, spaces, word).map((parts) => parts.join("")),
    fc
      .tuple(fc.oneof(length, number), spaces, fc.constantFrom("x", "X", "×", "*"), spaces, length)
      .map((parts) => parts.join("")),
  );
  const pattern = whole(surfacePattern());
  let read = 0;
  fc.assert(
    fc.property(forms, (text) => {
      const parsed = parseSurface(text);
      if (parsed.ok) read++;
      return !parsed.ok || pattern.test(text);
    }),
    { numRuns: 2000 },
  );
  expect(read).toBeGreaterThan(50);
  for (const text of ["450", "30 cm", "30 x 15", "450 L", "diameter 32", "0 cm x 3 cm"])
    expect([text, pattern.test(text)]).toEqual([text, false]);
});
