import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { batchKeySchema, type KeySchema } from "../../../src/batch-file/json-schema/key-schema.js";
import { textDefinitions } from "../../../src/batch-file/json-schema/text-definitions.js";
import type { TextForm } from "../../../src/batch-file/schema/leaf.js";
import { readQuantity } from "../../../src/batch-file/schema/quantities.js";
import { starter } from "../../../src/cli/new/starter.js";
import { quantityText } from "../../core/quantity/quantity-texts.js";
import { marked, takes } from "./editor.js";

const root = new URL("../../../", import.meta.url).pathname;
const filesIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(yaml|json)$/.test(name) && !name.endsWith(".schema.json"))
    .map((name) => join(folder, name));

test.each([...filesIn("fixtures/good"), ...filesIn("examples")])("an editor marks nothing in %s", (file) => {
  expect(marked(parse(readFileSync(join(root, file), "utf8")))).toEqual([]);
});

test("an editor marks nothing in the starter", () => {
  expect(marked(parse(starter))).toEqual([]);
});

test("an editor marks nothing in a JSON batch that names its schema", () => {
  expect(marked({ $schema: "./batch.schema.json", batch: "kites" })).toEqual([]);
});

/** The quantities that keys read, each once. */
function quantities(node: KeySchema, found = new Map<string, KeySchema & { reads: TextForm }>()) {
  if (typeof node.reads === "object")
    found.set(JSON.stringify(node.reads), node as KeySchema & { reads: TextForm });
  const others = node.additionalProperties;
  for (const child of [
    ...Object.values(node.properties ?? {}),
    ...(typeof others === "object" ? [others] : []),
    ...(node.items === undefined ? [] : [node.items]),
    ...(node.anyOf ?? []),
  ])
    quantities(child, found);
  return found;
}

test.each([...quantities(batchKeySchema())])("an editor marks no text that is read as %s", (_, node) => {
  const { refer, made } = textDefinitions();
  refer(node);
  const accepted = takes([...made.values()][0]!);
  const forms = node.reads as Exclude<TextForm, string>;
  const examples = (node.examples ?? []).map(String);
  let read = 0;
  fc.assert(
    fc.property(
      fc.oneof(fc.constantFrom(...examples), ...forms.map(({ kind }) => quantityText(kind))),
      (text) => {
        if (!forms.some(({ kind, limits }) => readQuantity(kind, limits, text).ok)) return true;
        read++;
        return accepted(text);
      },
    ),
  );
  expect(read).toBeGreaterThan(0);
});
