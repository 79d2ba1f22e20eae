import fc from "fast-check";
import { expect, test } from "vitest";
import { type KindName, kindOf, kinds } from "../../../src/core/quantity/kinds.js";
import { parseQuantity } from "../../../src/core/quantity/parse/parse-quantity.js";
import { formatQuantity } from "../../../src/core/quantity/text/format-quantity.js";

const names = Object.keys(kinds) as KindName[];
const symbols = (name: KindName): string[] => {
  const kind = kindOf(name);
  const above = kind.units.map((unit) => unit.symbol);
  const below = kind.per?.map((unit) => unit.symbol);
  const all = below === undefined ? above : above.flatMap((a) => below.map((b) => `${a}/${b}`));
  return name === "percent" ? ["%"] : all;
};

test.each(names)("formatQuantity writes a %s that parseQuantity reads back, in every unit", (name) => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-5, max: 1e8, noNaN: true }),
      fc.option(fc.double({ min: 1e-5, max: 1e6, noNaN: true }), { nil: undefined }),
      fc.constantFrom(...symbols(name)),
      (value, plusMinus, to) => {
        const given = plusMinus === undefined ? { value } : { value, plusMinus };
        const back = parseQuantity(name, formatQuantity(name, given, { to }));
        expect(back.faults).toEqual([]);
        if (!back.ok) return;
        expect(Math.abs(back.value.value - value)).toBeLessThanOrEqual(1e-12 * Math.max(value, 300));
        if (plusMinus === undefined) expect(back.value.plusMinus).toBeUndefined();
        else expect(Math.abs(back.value.plusMinus! - plusMinus)).toBeLessThanOrEqual(1e-12 * plusMinus);
      },
    ),
  );
});

test("parseQuantity returns an outcome for any text at all, and a fault always carries help", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.oneof(
        fc.string(),
        fc.stringMatching(/^[\d.,+\-± %/:a-zA-Z°²]{0,20}$/),
        fc.tuple(fc.integer(), fc.constantFrom("L", "s", "%", "/L", "")).map(([n, u]) => `${n} ${u}`),
      ),
      (name, text) => {
        const outcome = parseQuantity(name, text);
        if (outcome.ok) expect(Number.isFinite(outcome.value.value)).toBe(true);
        else for (const fault of outcome.faults) expect(fault.help).toMatch(/write/);
      },
    ),
    { numRuns: 2000 },
  );
});
