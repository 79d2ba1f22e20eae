import { expect, test } from "vitest";
import { readText } from "./read.js";

const batch = `batch: x
tanks: { six: { volume: 6 L } }
dyes: { coral: { dilution: 1:9, temperature: 80 °C } }
parts: { hook: { mass: 6 g, area: 40 cm2 } }
baths: [{ tank: six, dye: coral }]
handling: { load: 15 s, coolTo: 60 °C }
`;

const dryerAt = (celsius: string): string =>
  `{ trays: { capacity: 60, temperature: ${celsius}, time: 60 min, power: 500 W } }`;
const swatchAt = (strength: string): string => `[{ time: 30 s, strength: ${strength}, lab: [50, 40, 20] }]`;

test.each([
  ["handling.below", ["0.1 K", "10 K", "18 °F"], ["0 K", "10.1 K", "18.1 °F"]],
  ["handling.rinses", ["1", "12"], ["0", "13", "1.5", "2 L"]],
  ["handling.rinseEvery", ["1", "1000"], ["0", "1.5"]],
  ["handling.topUpTemperature", ["0 °C", "100 °C"], ["-1 °C", "101 °C"]],
  ["handling.coolTo", ["20.1 °C", "79.9 °C"], ["20 °C", "80 °C", "101 °C"]],
  ["tanks.six.least", ["0.1 L", "5.88 L"], ["0 L", "5.89 L"]],
  [
    "parts.hook.heatCapacity",
    ["0 kJ/(kg K)", "10 kJ/(kg K)"],
    ["-1 kJ/(kg K)", "10.1 kJ/(kg K)", "1.7 kJ/kg"],
  ],
  // A hundred years, and the years of the calendar that are planned.
  ["room.temperature", ["0 °C", "50 °C"], ["-1 °C", "51 °C"]],
  ["room.humidity", ["0 %", "100 %"], ["101 %"]],
  ["handling.freeboard", ["0 %", "95 %"], ["96 %"]],
  [
    "handling.dragOut",
    ["{ evidence: [{ part: hook, dry: 60 g, wet: 63 g, uncertain: 500 % }] }"],
    ["{ evidence: [{ part: hook, dry: 60 g, wet: 63 g, uncertain: 501 % }] }"],
  ],
  ["yield", ["1 %", "100 %"], ["0 %", "101 %"]],
  ["dryers", [dryerAt("20 °C"), dryerAt("200 °C")], [dryerAt("19 °C"), dryerAt("201 °C")]],
  [
    "shades",
    ["{ pale: { dye: coral, time: 30 s, tolerance: 50 } }"],
    [
      "{ pale: { dye: coral, time: 30 s, tolerance: 0 } }",
      "{ pale: { dye: coral, time: 30 s, tolerance: 50.1 } }",
    ],
  ],
  ["dyes.coral.timeFactor", ["0.1", "10"], ["0.09", "10.1"]],
  ["dyes.coral.strengthExponent", ["0.5", "4"], ["0.49", "4.01"]],
  [
    "dyes.coral.uptake",
    ["{ evidence: [{ yield: 12 m2/L, depth: 10 }] }"],
    ["{ evidence: [{ yield: 12 m2/L, depth: 10.1 }] }", "{ evidence: [{ yield: 12 m2/L, depth: 0 }] }"],
  ],
  [
    "baths.0.start",
    ["{ volume: 5 L, strength: 0 % }", "{ volume: 5 L, strength: 1000 % }"],
    ["{ volume: 5 L, strength: 1001 % }"],
  ],
  ["dyes.coral.swatches", [swatchAt("5 %"), swatchAt("300 %")], [swatchAt("4.9 %"), swatchAt("301 %")]],
  ["dyes.coral.activationEnergy", ["1 kJ/mol", "500 kJ/mol"], ["0 kJ/mol", "501 kJ/mol"]],
  [
    "dyes.coral.measuredAt",
    ["{ temperature: 100 °C }"],
    ["{ temperature: 101 °C }", "{ temperature: -1 °C }"],
  ],
  [
    "dyes.coral.swatches",
    ["[{ time: 30 s, temperature: 0 °C, lab: [50, 40, 20] }]"],
    [
      "[{ time: 30 s, temperature: 101 °C, lab: [50, 40, 20] }]",
      "[{ time: 30 s, temperature: -300 °C, lab: [50, 40, 20] }]",
    ],
  ],
  ["dyes.coral.shelfLife", ["1 h", "36525 d"], ["0 d", "36526 d"]],
  ["dyes.coral.leadTime", ["0 d", "36525 d"], ["36526 d"]],
  ["baths.0.every", ["1 h", "36525 d"], ["0 d", "36526 d"]],
  ["baths.0.start", ["{ volume: 5 L, age: 36525 d }"], ["{ volume: 5 L, age: 36526 d }"]],
  ["date", ["1900-01-01", "2999-12-31"], ["1899-12-31", "3000-01-01", "9999-12-31"]],
  [
    "bases",
    ["{ b: { lab: [50, 150, -150] } }"],
    ["{ b: { lab: [50, 150.1, 0] } }", "{ b: { lab: [50, 0, -150.1] } }"],
  ],
  ["parts.hook.dragOut", ["0 mL/dm2", "5 mL/dm2"], ["-1 mL/dm2", "5 mL"]],
])("%s is read from %j and refused as %j", async (key, good, bad) => {
  const errorsWith = async (value: string) =>
    (await readText(batch, { overrides: [`${key}=${value}`] })).diagnostics.length;
  expect(await Promise.all(good.map(errorsWith))).toEqual(good.map(() => 0));
  expect(await Promise.all(bad.map(errorsWith))).toEqual(bad.map(() => 1));
});
