import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { batchJsonSchema } from "../../../src/batch-file/json-schema/batch-json-schema.js";
import type { JsonSchema } from "../../../src/batch-file/json-schema/json-schema.js";
import { readBatch } from "../../../src/batch-file/read-batch.js";
import { readFile } from "../read.js";
import { marked } from "./editor.js";

const folder = "fixtures/bad";
/** Faults of one value or one map, which a schema can know. */
const known = new Set([
  "unit-missing",
  "unit-wrong",
  "unit-unknown",
  "decimal-comma",
  "negative",
  "quantity-form",
  "dilution-form",
  "yield-form",
  "unknown-key",
  "unknown-word",
  "wrong-type",
  "hex-form",
  "lab-form",
  "reading-form",
  "number-form",
  "half-width-form",
  "not-positive",
  "currency-in-price",
  "date",
  "include-form",
  "liquid-or-powder",
  "currency",
  "time-of-day",
  "shade-target",
  "swatch-colour",
  "base-colour",
  "evidence-kind",
  "kept-volume",
  "evidence-key",
  "name-form",
  "control-character",
]);
const root = new URL(`../../../${folder}/`, import.meta.url).pathname;
const files = readdirSync(root).filter((name) => /\.(yaml|json)$/.test(name));

/** The data of a file that YAML can read. */
function dataOf(file: string): unknown {
  try {
    return parse(readFileSync(`${root}${file}`, "utf8"), { logLevel: "error" });
  } catch {
    return undefined;
  }
}

test("an editor marks the bad files whose fault lies in one value or one map", async () => {
  let told = 0;
  for (const file of files) {
    const data = dataOf(file);
    if (typeof data !== "object" || data === null || Array.isArray(data)) continue;
    const name = `${folder}/${file}`;
    const { diagnostics } = await readBatch({ name, text: readFile(name), readFile });
    const codes = diagnostics.flatMap(({ code, spans }) => (spans[0]?.file === name ? [code] : []));
    if (!codes.some((code) => known.has(code))) continue;
    told++;
    expect([file, codes, marked(data).length > 0]).toEqual([file, codes, true]);
  }
  expect(told).toBeGreaterThan(40);
});

const good = () =>
  parse(`
batch: kites
tanks: { bench: { volume: 6 L } }
dyes: { lagoon: { dilution: 1:9, temperature: 80 °C } }
parts: { cleat: { mass: 6.4 g, area: 41 cm2 } }
shades: { pale: { dye: lagoon, time: 30 s } }
baths: [{ tank: bench, dye: lagoon }]
`);

test.each([
  ["tanks.bench.volume", "6 kg"],
  ["tanks.bench.volume", "6,5 L"],
  ["tanks.bench.volume", 6],
  ["tanks.bench.volume", "0 L"],
  ["tanks.bench.surface", "30 cm"],
  ["tanks.bench.cover", "tin"],
  ["tanks.bench.heatr", "500 W"],
  ["yield", "197 %"],
  ["yield", "0 %"],
  ["handling.freeboard", "96 %"],
  ["dyes.lagoon.dilution", "1/10"],
  ["dyes.lagoon.dilution", "0.1"],
  ["dyes.lagoon.reading", "daylight"],
  ["dyes.lagoon.saturation", 0],
  ["dyes.lagoon.price", "90.00 /kg"],
  ["dyes.lagoon.stock", "500 g"],
  ["dyes.lagoon.uptake", "0.006 g/dm2"],
  ["parts.cleat.mass", "6.4 cm3"],
  ["parts.cleat.blank", "1,84"],
  ["parts.cleat.blank", -1],
  ["parts.cleat.perLoad", 0],
  ["parts.cleat.dragOut", "1.6 mL"],
  ["parts.cleat.heatCapacity", "1.7 kJ/kg"],
  ["tanks.bench.least", "0 L"],
  ["handling.loadPart", "2"],
  ["handling.rinses", 13],
  ["handling.rinses", 1.5],
  ["handling.rinseEvery", 0],
  ["handling.below", "0 K"],
  ["handling.below", "1 %"],
  ["handling.topUpTemperature", "50"],
  ["shades.pale.hex", "#abc"],
  ["shades.pale.tolerance", 51],
  ["baths.0.start", "old"],
  ["baths.0.topUp", "often"],
  ["currency", "EURO"],
  ["date", "16.04.2027"],
  ["startAt", "8 am"],
  ["batch", " "],
])("an editor marks %s: %s", (path, value) => {
  const batch = good();
  expect(marked(batch)).toEqual([]);
  const steps = path.split(".");
  const key = steps.pop()!;
  let at = batch;
  for (const step of steps) at = at[step] ??= {};
  at[key] = value;
  const places = [...steps.map((_, i) => steps.slice(0, i + 1)), [...steps, key]].map(
    (place) => `/${place.join("/")}`,
  );
  expect(marked(batch).map(({ at: place }) => place)).toEqual(
    expect.arrayContaining([expect.toSatisfy((place: string) => places.includes(place))]),
  );
});

test("a kept bath with neither or both of its volumes is marked", () => {
  for (const [start, places] of [
    [{ volume: "5.6 L" }, []],
    [{ coldVolume: "5.4 L", strength: "90 %" }, []],
    [{ strength: "90 %" }, ["/baths/0/start"]],
    [{ volume: "5.6 L", coldVolume: "5.4 L" }, ["/baths/0/start"]],
  ] as const) {
    const batch = good();
    batch.baths[0].start = start;
    const found = marked(batch).map(({ at }) => at);
    expect([start, found.length > 0]).toEqual([start, places.length > 0]);
    expect(found).toEqual(expect.arrayContaining([...places]));
  }
});

test("a shade without a target, a part without mass and area, and names with white space are marked", () => {
  const batch = good();
  delete batch.shades.pale.time;
  expect(marked(batch).map(({ at }) => at)).toContain("/shades/pale");
  const heavy = good();
  delete heavy.parts.cleat.area;
  expect(marked(heavy).map(({ at }) => at)).toContain("/parts/cleat");
  const named = good();
  named.bases = { "white ": {} };
  expect(marked(named).map(({ at }) => at)).toContain("/bases");
});

test("what a powder is bought by is marked for a liquid alone, and the other way round", () => {
  const powder = good();
  powder.dyes.lagoon = { dilution: "20 g/L", temperature: "80 °C", price: "90.00 /kg", stock: "500 g" };
  expect(marked(powder)).toEqual([]);
  powder.dyes.lagoon.price = "46.00 /L";
  expect(marked(powder).map(({ at }) => at)).toContain("/dyes/lagoon/price");
  const evidence = good();
  evidence.dyes.lagoon.uptake = { evidence: [{ yield: "12 m2/L" }] };
  expect(marked(evidence)).toEqual([]);
});

/** Every node with a pattern, but for conditions. */
function patterned(node: unknown): JsonSchema[] {
  if (typeof node !== "object" || node === null) return [];
  const { if: _, ...below } = node as JsonSchema;
  const own = typeof below.pattern === "string" ? [below] : [];
  return [...own, ...Object.values(below).flatMap(patterned)];
}

test("every pattern says what to write, and works with and without the flag u", () => {
  const nodes = patterned(batchJsonSchema());
  expect(nodes.length).toBeGreaterThan(60);
  for (const { pattern, patternErrorMessage } of nodes) {
    expect(patternErrorMessage).toMatch(/^write /);
    const [plain, unicode] = [new RegExp(pattern as string), new RegExp(pattern as string, "u")];
    for (const text of ["6 L", "6 kg", "80 °C", "1:9", "12 m²", "white", "450 cm2", "3 s ± 10 %"])
      expect(plain.test(text)).toBe(unicode.test(text));
  }
});
