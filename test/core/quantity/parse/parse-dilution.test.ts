import { expect, test } from "vitest";
import { parseDilution } from "../../../../src/core/quantity/parse/parse-dilution.js";

test.each<[string, { kind: string; value: number; plusMinus?: number }]>([
  ["1:9", { kind: "liquid", value: 0.1 }],
  ["1 : 9", { kind: "liquid", value: 0.1 }],
  ["2:3", { kind: "liquid", value: 0.4 }],
  ["10 %", { kind: "liquid", value: 0.1 }],
  ["100 mL/L", { kind: "liquid", value: 0.1 }],
  ["12.8 fl oz/gal", { kind: "liquid", value: 0.1 }],
  ["20 g/L", { kind: "powder", value: 20 }],
  ["1:9 ± 20 %", { kind: "liquid", value: 0.1, plusMinus: 0.02 }],
  ["20 g/L ± 1 g/L", { kind: "powder", value: 20, plusMinus: 1 }],
])("parseDilution reads %j", (text, expected) => {
  const outcome = parseDilution(text);
  expect(outcome.faults).toEqual([]);
  if (!outcome.ok) return;
  expect(outcome.value.kind).toBe(expected.kind);
  expect(outcome.value.value).toBeCloseTo(expected.value, 12);
  if (expected.plusMinus !== undefined) expect(outcome.value.plusMinus).toBeCloseTo(expected.plusMinus, 12);
});

test.each([
  ["1/10", "write 1:9 if 10 parts of bath hold 1 of dye, or 1:10 if 10 parts of water are added"],
  ["0.1", "write 10 % if this is the dye's share of the bath, or 100 mL/L"],
  ["9", "write 9 %, 1:9 or 9 mL/L, or 9 g/L for a powder"],
  ["0:9", "write 1:9 (1 part dye + 9 parts water), 10 %, 100 mL/L, or 20 g/L for a powder"],
  ["110 %", "write 1:9 (1 part dye + 9 parts water), 10 %, 100 mL/L, or 20 g/L for a powder"],
  ["100 mL/dm2", "write 1:9 (1 part dye + 9 parts water), 10 %, 100 mL/L, or 20 g/L for a powder"],
  ["1-9", "put a colon between dye and water: write 1:9 (1 of dye + 9 of water)"],
  ["2 – 3", "put a colon between dye and water: write 2:3 (2 of dye + 3 of water)"],
  ["weak", "write 1:9 (1 part dye + 9 parts water), 10 %, 100 mL/L, or 20 g/L for a powder"],
  ["7,5 %", "use a decimal point: write 7.5 %"],
])("parseDilution refuses %j and says what to write", (text, help) => {
  expect(parseDilution(text).faults.map((f) => f.help)).toEqual([help]);
});
