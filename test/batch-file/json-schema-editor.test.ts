import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { batchJsonSchema } from "../../src/batch-file/json-schema.js";
import { starter } from "../../src/cli/new/starter.js";

const ajv = () =>
  new Ajv2020({ allErrors: true, allowUnionTypes: true, formats: { date: /^\d{4}-\d\d-\d\d$/ } });
const faults = (batch: unknown): string[] => {
  const valid = ajv().compile(batchJsonSchema());
  valid(batch);
  return (valid.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
};

test("batchJsonSchema accepts the starter and every example", () => {
  expect(faults(parse(starter))).toEqual([]);
  const root = new URL("../../examples/", import.meta.url).pathname;
  const examples = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((name) =>
    name.endsWith(".yaml"),
  );
  expect(examples.length).toBeGreaterThan(0);
  for (const name of examples)
    expect([name, faults(parse(readFileSync(join(root, name), "utf8")))]).toEqual([name, []]);
});

test("batchJsonSchema refuses an unknown key, a missing one, a wrong type and a wrong choice", () => {
  const batch = parse(starter);
  batch.tanks.small.heatr = "500 W";
  delete batch.dyes.moss.dilution;
  batch.orders[0].quantity = "forty";
  batch.baths[0].topUp = "often";
  const found = faults(batch);
  for (const place of ["/tanks/small", "/dyes/moss", "/orders/0/quantity", "/baths/0/topUp"])
    expect(found.filter((fault) => fault.startsWith(`${place} `)).length).toBeGreaterThan(0);
});

/** All nodes of a schema that stand for values of a file. */
function nodes(node: unknown): Record<string, unknown>[] {
  if (Array.isArray(node)) return node.flatMap(nodes);
  if (typeof node !== "object" || node === null) return [];
  const own = node as Record<string, unknown>;
  const { default: _default, examples: _examples, enum: _enum, ...below } = own;
  return [own, ...Object.values(below).flatMap(nodes)];
}

test("every default and example in batchJsonSchema is a value that its own key takes", () => {
  let counted = 0;
  for (const node of nodes(batchJsonSchema())) {
    if (typeof node.type === "undefined" && node.anyOf === undefined) continue;
    const samples = [
      ...(Array.isArray(node.examples) ? node.examples : []),
      ...("default" in node ? [node.default] : []),
    ];
    const valid = ajv().compile(node);
    for (const sample of samples) {
      counted++;
      expect([node.description, sample, valid(sample)]).toEqual([node.description, sample, true]);
    }
  }
  expect(counted).toBeGreaterThan(80);
});

test("batchJsonSchema says a rule in the description and never offers it as a value", () => {
  const texts = nodes(batchJsonSchema())
    .map(({ default: value }) => value)
    .filter((value) => typeof value === "string");
  expect(texts).toContain("20 °C");
  expect(texts).not.toContain("1.15 x volume");
  expect(JSON.stringify(batchJsonSchema())).toContain("default: 1.15 x volume");
});
