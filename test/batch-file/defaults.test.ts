import { expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { batchKeySchema, type KeySchema } from "../../src/batch-file/json-schema/key-schema.js";
import { modelReader } from "../../src/batch-file/resources/model-reader.js";
import type { Amount } from "../../src/batch-file/schema/quantities.js";
import { isError } from "../../src/core/fault.js";
import { defaults } from "../../src/core/model/defaults.js";
import type { KindName } from "../../src/core/quantity/kinds.js";
import { parseQuantity } from "../../src/core/quantity/parse/parse-quantity.js";
import { rangeInWords } from "../../src/core/quantity/text/range-in-words.js";
import { readBytes, readText } from "./read.js";

/** A batch that has every map and list in which a key has a default, and none of these keys. */
const base = `
batch: bare
currency: EUR
bases: { chalk: { lab: [92, 0, 0] } }
tanks: { bench: { volume: 6 L } }
dryers: { trays: { capacity: 60, temperature: 70 °C, time: 60 min, power: 500 W } }
dyes:
  lagoon: { dilution: 1:9, temperature: 80 °C, swatches: [{ time: 30 s, lab: [60, 0, -20] }] }
  moss: { dilution: 1:9, temperature: 80 °C, uptake: { evidence: [{ yield: 12 m2/L }] } }
  rust: { dilution: 1:9, temperature: 80 °C, base: chalk, swatches: [{ time: 30 s, lab: [60, 30, 30] }, { time: 90 s, lab: [50, 40, 40] }], uptake: { evidence: [{ slower: 1.3, dyed: 9 m2, volume: 6 L, depth: 0.5 }] } }
parts:
  cleat: { mass: 6.4 g, area: 41 cm2, blank: { powder: 62.00 /kg, refresh: 40 %, packing: 10 %, build: 14 h, partsPerBuild: 180, machine: 9.50 /h } }
  wing: { mass: 6.4 g, area: 41 cm2, blank: { chalk: { powder: 62.00 /kg, refresh: 40 %, packing: 10 %, build: 14 h, partsPerBuild: 180, machine: 9.50 /h } } }
  spar: { mesh: { file: fixtures/models/block.stl } }
shades: { pale: { dye: lagoon, time: 30 s } }
baths:
  - { tank: bench, dye: lagoon }
  - { tank: bench, dye: lagoon, start: { volume: 5 L } }
  - { tank: bench, dye: lagoon, start: { coldVolume: 5 L } }
orders: [{ part: cleat, shade: pale, quantity: 12 }]
room: {}
handling: {}
consumables: {}
pricing: {}
`;
const weighed = base.replace(
  "handling: {}",
  "handling: { dragOut: { evidence: [{ part: cleat, dry: 64 g, wet: 67 g }] } }",
);

type Step = string | number;
const readWhole = (data: unknown) =>
  readText(stringify(data), { name: "bare.yaml", measure: modelReader((file) => readBytes(file)) });

/** Keys with what the schema says of their absence; "*" is every name or item. */
function keysWith(what: "default" | "otherwise", node = batchKeySchema(), path: Step[] = []) {
  const found: { path: Step[]; value: unknown }[] = [];
  const visit = (child: KeySchema | undefined, step: Step | undefined): void => {
    if (child !== undefined)
      found.push(...keysWith(what, child, step === undefined ? path : [...path, step]));
  };
  if (node[what] !== undefined) found.push({ path, value: node[what] });
  for (const [key, child] of Object.entries(node.properties ?? {})) visit(child, key);
  if (typeof node.additionalProperties === "object") visit(node.additionalProperties, "*");
  visit(node.items, "*");
  for (const option of node.anyOf ?? []) visit(option, undefined);
  return found;
}

/** Copies of the data, in each of which one place that the path leads to holds the value. */
function variants(data: unknown, path: readonly Step[], value: unknown): unknown[] {
  const [step, ...rest] = path as [Step, ...Step[]];
  if (typeof data !== "object" || data === null) return [];
  const steps = step === "*" ? Object.keys(data) : [step];
  return steps.flatMap((key) => {
    const here = (data as Record<string, unknown>)[key];
    const copy = (child: unknown): unknown =>
      Array.isArray(data)
        ? data.map((item, i) => (i === Number(key) ? child : item))
        : { ...data, [key]: child };
    if (rest.length > 0) return variants(here, rest, value).map(copy);
    return here === undefined ? [copy(value)] : [];
  });
}

const written = keysWith("default").filter(({ path }) => path.length > 0);

test("the schema names at least thirty defaults as they would be written", () => {
  expect(written.length).toBeGreaterThanOrEqual(30);
});

test.each(written.map(({ path, value }) => [path.join("."), path, value] as const))(
  "the batch is the same without %s and with its default",
  async (_, path, value) => {
    const data = parse(path[1] === "dragOut" ? weighed : base);
    const without = await readWhole(data);
    expect(without.diagnostics.filter(isError)).toEqual([]);
    let compared = 0;
    for (const variant of variants(data, path, value)) {
      const { batch, diagnostics } = await readWhole(variant);
      // The key belongs to another kind of evidence, or to another form of blank.
      if (diagnostics.some(({ code }) => code === "evidence-key" || code === "missing-key")) continue;
      compared++;
      expect(diagnostics.filter(isError)).toEqual([]);
      expect({ rework: defaults.rework, ...batch }).toEqual({ rework: defaults.rework, ...without.batch });
    }
    expect(compared).toBeGreaterThan(0);
  },
);

test("an assumed figure in the schema is the one that is applied", async () => {
  const { spec } = await readText(
    "batch: bare\ndyes: { lagoon: { dilution: 1:9, temperature: 80 °C } }\nparts: { cleat: { mass: 6.4 g, area: 41 cm2 } }\n",
  );
  const applied: { readonly [path: string]: readonly [KindName, Amount] } = {
    "dyes.*.activationEnergy": ["energyPerMole", spec!.dyes.lagoon!.activationEnergy],
    "dyes.*.uptake": ["volumePerArea", spec!.dyes.lagoon!.uptake],
    "parts.*.density": ["density", spec!.parts.cleat!.density],
    "handling.load": ["time", spec!.handling.load],
    "handling.loadPart": ["time", spec!.handling.loadPart],
    "handling.drain": ["time", spec!.handling.drain],
    "handling.rinse": ["time", spec!.handling.rinse],
    "handling.unload": ["time", spec!.handling.unload],
    "handling.unloadPart": ["time", spec!.handling.unloadPart],
    "handling.dryerLoading": ["time", spec!.handling.dryerLoading],
    "handling.setUp": ["time", spec!.handling.setUp],
    "handling.cleanUp": ["time", spec!.handling.cleanUp],
    "handling.dragOut": ["volumePerArea", spec!.handling.dragOut],
    "handling.liquorRatio": ["volumePerMass", spec!.handling.liquorRatio],
  };
  const said = keysWith("otherwise").filter(({ value }) => /^\d.*assumed/.test(String(value)));
  expect(said.map(({ path }) => path.join("."))).toEqual(Object.keys(applied));
  for (const { path, value } of said) {
    const [kind, amount] = applied[path.join(".")]!;
    const read = parseQuantity(
      kind,
      String(value).split(",")[0]!,
      / min,/.test(String(value)) ? { unit: "min" } : {},
    );
    const { factor, ...figure } = amount;
    expect(read.ok && { ...read.value, assumed: true }).toEqual(figure);
    const range = String(value).split(",")[1]!.trim();
    if (path.at(-1) === "activationEnergy") {
      expect(range).toBe("published range 45 to 117");
      expect(factor).toBeCloseTo(Math.sqrt(117 / 45), 12);
    } else if (factor !== undefined) expect(range).toBe(rangeInWords(factor));
    else expect([path.at(-1), /^(?:assumed|sintered nylon)$/.test(range)]).toEqual([path.at(-1), true]);
  }
});
