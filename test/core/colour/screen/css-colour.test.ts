import fc from "fast-check";
import { expect, test } from "vitest";
import { cssToHex, hexToSrgb } from "../../../../src/core/colour/screen/css-colour.js";
import { labFault, parseColour } from "../../../../src/core/colour/screen/parse-colour.js";
import { labToSrgb, srgbToHex, srgbToLab } from "../../../../src/core/colour/screen/srgb.js";

test("every hex colour returns from CIELAB as it was", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
      const hex = `#${value.toString(16).padStart(6, "0")}`;
      expect(cssToHex(hex)).toMatchObject({ ok: true, value: hex });
      expect(srgbToHex(labToSrgb(srgbToLab(hexToSrgb(hex))))).toBe(hex);
    }),
  );
});

test("cssToHex reads three digits, names and HSL in any case", () => {
  for (const [text, hex] of [
    ["#AbC", "#aabbcc"],
    ["RebeccaPurple", "#663399"],
    [" black ", "#000000"],
    ["hsl(0 100% 50%)", "#ff0000"],
    ["HSL(-120deg, 100%, 50%)", "#0000ff"],
    ["hsl(480, 100%, 50%)", "#00ff00"],
  ] as const)
    expect(cssToHex(text)).toMatchObject({ ok: true, value: hex });
});

test.each([
  "",
  "#12",
  "#12345g",
  "123456",
  "#1234567",
  "constructor",
  "toString",
  "no-colour",
  "hsl(1,2,3)",
  "hsl(1, 120%, 5%)",
])("cssToHex refuses %j instead of taking it as black", (text) => {
  const read = cssToHex(text);
  expect(read.ok).toBe(false);
  expect(read.faults[0]!.code).toMatch(/^colour-(unknown|range)$/);
});

test("parseColour reads L,a,b and says what is wrong with one", () => {
  expect(parseColour(" 65.9 , -44.6,+23 ")).toMatchObject({
    ok: true,
    value: { kind: "lab", lab: [65.9, -44.6, 23] },
  });
  expect(parseColour("tomato")).toMatchObject({ ok: true, value: { kind: "hex", hex: "#ff6347" } });
  expect(parseColour("165.9,0,0").faults[0]).toMatchObject({
    code: "colour-range",
    message: "L must lie in 0 to 100, not 165.9",
  });
  expect(parseColour("65.9,x,0").faults[0]!.code).toBe("colour-number");
  expect(parseColour("65.9,1").faults[0]!.code).toBe("colour-unknown");
  expect(labFault([50, 0, 201])).toContain("b must lie");
  expect(labFault([50, Number.NaN, 0])).toContain("a must lie");
});
