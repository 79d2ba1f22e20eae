import { expect, test } from "vitest";
import { parse } from "yaml";
import type { ZodType } from "zod";
import { batchJsonSchema } from "../../../src/batch-file/json-schema/batch-json-schema.js";
import type { JsonSchema } from "../../../src/batch-file/json-schema/json-schema.js";
import { batchKeySchema, type KeySchema } from "../../../src/batch-file/json-schema/key-schema.js";
import { snippetOf } from "../../../src/batch-file/json-schema/snippet-of.js";
import { batchSchema } from "../../../src/batch-file/schema/batch.js";
import { takes } from "./editor.js";

/** A node of the keys with the reader of its values. */
interface Key {
  readonly path: string;
  readonly node: KeySchema;
  readonly reader: ZodType;
}
interface Def {
  readonly shape?: Readonly<Record<string, ZodType>>;
  readonly valueType?: ZodType;
  readonly element?: ZodType;
  readonly innerType?: ZodType;
  readonly options?: readonly ZodType[];
}

/** Every key of the batch file, once for each form that its value can take. */
function keys(node: KeySchema, reader: ZodType, path = ""): Key[] {
  const def = reader._zod.def as Def;
  if (def.innerType !== undefined) return keys(node, def.innerType, path);
  const { properties = {}, additionalProperties: others, items, anyOf = [] } = node;
  return [
    { path, node, reader },
    ...Object.entries(def.shape ?? {}).flatMap(([key, of]) => keys(properties[key]!, of, `${path}.${key}`)),
    ...(def.valueType && typeof others === "object" ? keys(others, def.valueType, `${path}.NAME`) : []),
    ...(def.element && items ? keys(items, def.element, `${path}.ITEM`) : []),
    ...(def.options ?? []).flatMap((of, i) => keys(anyOf[i]!, of, path)),
  ];
}

const all = keys(batchKeySchema(), batchSchema());

/** What a template leaves when every place in it is taken as it is. */
function filledIn(body: unknown): unknown {
  if (typeof body === "object" && body !== null)
    return Object.fromEntries(Object.entries(body).map(([key, of]) => [key, filledIn(of)]));
  return parse(
    String(body)
      .replace(/^\^/, "")
      .replace(/\$\{\d+:([^}]*)\}/g, "$1"),
  );
}

test("every example, default, word and template of a key is one that is read there", () => {
  let offered = 0;
  for (const { path, node, reader } of all) {
    const snippet = snippetOf(node);
    const values = [
      ...(node.examples ?? []),
      ...(node.enum ?? []),
      ...(node.default === undefined ? [] : [node.default]),
      ...(snippet === undefined ? [] : [filledIn(snippet.body)]),
    ];
    for (const value of values) {
      offered++;
      expect([path, value, reader.safeParse(value).error?.issues]).toEqual([path, value, undefined]);
    }
  }
  expect(offered).toBeGreaterThan(150);
});

test("the templates are those of lab, hex, a kept bath and a blank that is built up", () => {
  const templates = all.flatMap(({ path, node }) => {
    const snippet = snippetOf(node);
    return snippet === undefined ? [] : [[path, filledIn(snippet.body)]];
  });
  expect(Object.fromEntries(templates)).toMatchObject({
    ".shades.NAME.lab": [57, 54.1, 30.2],
    ".shades.NAME.hex": "#d9603b",
    ".baths.ITEM.start": { volume: "5.6 L" },
    ".parts.NAME.blank": { powder: "62.00 /kg", refresh: "40 %", partsPerBuild: 180 },
  });
});

/** Every node of the schema as an editor has it. */
function nodes(node: unknown): JsonSchema[] {
  if (Array.isArray(node)) return node.flatMap(nodes);
  if (typeof node !== "object" || node === null) return [];
  const {
    default: _default,
    examples: _examples,
    enum: _enum,
    defaultSnippets: _snippets,
    ...below
  } = node as JsonSchema;
  return [node as JsonSchema, ...Object.values(below).flatMap(nodes)];
}
const edited = nodes(batchJsonSchema()).filter(({ description }) => typeof description === "string");

test("an editor marks none of its own examples and defaults", () => {
  let offered = 0;
  for (const node of edited) {
    const values = [...(node.examples ?? []), ...("default" in node ? [node.default] : [])];
    if (values.length === 0) continue;
    const taken = takes(node);
    for (const value of values) {
      offered++;
      expect([node.description, value, taken(value)]).toEqual([node.description, value, true]);
    }
  }
  expect(offered).toBeGreaterThan(100);
});

test("the description of a key says its default; a rule or an assumption is never offered as a value", () => {
  for (const node of edited)
    if ("default" in node) expect(node.description?.endsWith(`; default: ${node.default}`)).toBe(true);
  const texts = edited.map(({ description }) => description);
  expect(texts).toContain("volume to the brim; default: 1.15 x volume");
  expect(texts).toContain(
    "liquor carried out per wetted area, or evidence of it; default: 0.8 mL/dm2, a third to three times, assumed",
  );
  const defaults = edited.map(({ default: value }) => value);
  expect(defaults).toContain("20 °C");
  expect(defaults).not.toContain("1.15 x volume");
});

test("a shade that has its target is offered no other one", () => {
  const { shades } = batchJsonSchema().properties as { readonly shades: KeySchema };
  const forms = (shades.additionalProperties as KeySchema).oneOf!.map(({ properties }) =>
    Object.keys(properties!),
  );
  expect(forms).toEqual(["time", "swatch", "lab", "hex"].map((target) => ["dye", target, "tolerance"]));
});

test("a liquid is offered prices per volume, a powder per mass, and neither before the dilution is known", () => {
  const { dyes } = batchJsonSchema().properties as { readonly dyes: KeySchema };
  const dye = (dyes.additionalProperties as KeySchema).anyOf![0]!;
  expect(dye.properties!.price).not.toHaveProperty("examples");
  const offered = (dye.allOf as KeySchema[]).map(({ if: wanted, then }) => ({
    of: ["1:9", "10 %", "20 g/L"].filter((dilution) => takes(wanted as object)({ dilution })),
    examples: Object.values((then as KeySchema).properties!).flatMap(({ examples }) => examples),
  }));
  expect(offered).toEqual([
    { of: ["1:9", "10 %"], examples: ["46.00 /L", "1.5 L", "0.03 mL/dm2"] },
    { of: ["20 g/L"], examples: ["90.00 /kg", "500 g", "0.006 g/dm2"] },
  ]);
});
