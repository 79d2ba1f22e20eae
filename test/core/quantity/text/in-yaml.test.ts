import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { inYaml } from "../../../../src/core/quantity/text/in-yaml.js";

const readsBack = (name: string): void => {
  const text = inYaml(name);
  expect(parse(`{ ${text}: 92 %, dye: ${text} }`)).toEqual({ [name]: "92 %", dye: name });
};

test("names that mean something else to YAML are read back as they are", () => {
  for (const name of ["true", "False", "NULL", "1", "1.10", "a, b", "a: b", "#x", "-", "~", "it's", "d'or"])
    readsBack(name);
  expect(["sea-blue", "Grün", "日本語", "nullable"].map(inYaml)).toEqual([
    "sea-blue",
    "Grün",
    "日本語",
    "nullable",
  ]);
});

test("any name is read back as it is", () => {
  const names = fc.string({ unit: "grapheme", minLength: 1 });
  fc.assert(
    fc.property(
      names.filter((name) => name !== "dye" && name !== "__proto__"),
      readsBack,
    ),
  );
});
