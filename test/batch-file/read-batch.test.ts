import { expect, test } from "vitest";
import { modelReader } from "../../src/batch-file/resources/model-reader.js";
import { done, error, failed } from "../../src/core/fault.js";
import { toDiagnostic } from "../../src/diagnostics/to-diagnostic.js";
import { readBytes, readFile, readGood, readText } from "./read.js";

const block = readBytes("fixtures/models/block.stl");

test("locate leads from a path into the batch to the value in the file that it came from", async () => {
  const { locate } = await readGood("everything.yaml");
  expect(locate(["tanks", "bench", "heater"])).toEqual({
    file: "fixtures/good/everything-workshop.yaml",
    line: 15,
    column: 13,
    length: 5,
    text: "    heater: 450 W",
  });
  expect(locate(["orders", 1, "quantity"])).toMatchObject({
    file: "fixtures/good/everything.yaml",
    line: 52,
    column: 51,
  });
  expect(locate(["dyes", "lagoon", "swatches", 2, "lab"])).toMatchObject({
    line: 12,
    column: 29,
    length: 20,
  });
});

test("locate leads to the nearest key around a path that is not in the file", async () => {
  const { locate } = await readGood("everything.yaml");
  expect(locate(["tanks", "drum", "capacity"])).toMatchObject({ line: 20, column: 3, length: 4 });
});

test("locate leads into the right file where lists are joined", async () => {
  const { locate } = await readGood("diamond.yaml");
  expect(locate(["orders", 0, "quantity"])).toMatchObject({
    file: "fixtures/good/diamond-left.yaml",
    line: 4,
  });
  expect(locate(["orders", 1])).toMatchObject({
    file: "fixtures/good/folder/diamond-right.yaml",
    line: 4,
    column: 5,
  });
  expect(locate(["orders", 2])).toMatchObject({ file: "fixtures/good/diamond.yaml", line: 5 });
});

test("locate finds places in a JSON file and in a --set argument", async () => {
  const { locate } = await readGood("small.json", { overrides: ["parts.cleat.mass=6 g"] });
  expect(locate(["tanks", "bench", "heater"])).toMatchObject({
    line: 3,
    text: expect.stringContaining("400 W"),
  });
  expect(locate(["parts", "cleat", "mass"])).toEqual({
    file: "--set",
    line: 1,
    column: 18,
    length: 3,
    text: "parts.cleat.mass=6 g",
  });
});

test("toDiagnostic gives a fault of the core its place in the file", async () => {
  const { locate } = await readGood("small.yaml");
  const fault = error("too-cold", ["tanks", "bench", "heater"], "the heater reaches 61 °C", "use a lid");
  expect(toDiagnostic(fault, locate)).toEqual({
    code: "too-cold",
    severity: "error",
    message: "the heater reaches 61 °C",
    help: "use a lid",
    spans: [
      {
        file: "fixtures/good/small.yaml",
        line: 4,
        column: 33,
        length: 5,
        text: "  bench: { volume: 6 L, heater: 400 W }",
      },
    ],
  });
  expect(toDiagnostic({ ...fault, path: [] }, () => undefined).spans).toEqual([]);
});

test("overrides are carried out in order: values, list items, whole maps, and maps that the file leaves out", async () => {
  const { batch, diagnostics } = await readGood("small.yaml", {
    overrides: [
      "tanks.bench.volume=5 L",
      "tanks.bench.volume=7 L",
      "tanks.bench.surface=450 cm2",
      "orders.0.quantity=33",
      "handling.longest=10 min",
      "tanks.spare={ volume: 3 L, surface: 200 cm2 }",
      "dyes.lagoon.dilution=1:19",
      "batch=other",
    ],
  });
  expect(diagnostics).toEqual([]);
  expect(batch!.name).toBe("other");
  expect(batch!.tanks.map((tank) => tank.volumeL)).toEqual([7, 3]);
  expect(batch!.orders[0]!.quantity).toBe(33);
  expect(batch!.handling.longestSeconds).toBe(600);
  expect(batch!.dyes[0]!.dilution).toEqual({ kind: "liquid", fraction: 0.05 });
});

test("an override addresses a name that holds a dot in quotes or with a backslash, and marks it whole", async () => {
  const text =
    'batch: x\nparts: { "clip v1.2": { mass: 6 g, area: 40 cm2 }, "a=b": { mass: 6 g, area: 40 cm2 } }\n';
  for (const name of ['"clip v1.2"', "'clip v1.2'", "clip v1\\.2"]) {
    const { batch, diagnostics } = await readText(text, { overrides: [`parts.${name}.mass=5 g`] });
    expect(diagnostics).toEqual([]);
    expect(batch!.parts.map(({ massG }) => massG)).toEqual([5, 6]);
  }
  const other = await readText(text, { overrides: ['parts."a=b".mass=5 g'] });
  expect(other.batch!.parts.map(({ massG }) => massG)).toEqual([6, 5]);
  const { diagnostics } = await readText(text, { overrides: ['parts."clip v1.3".mass=5 g'] });
  expect(diagnostics).toMatchObject([
    { message: "clip v1.3 is not defined here", help: "did you mean clip v1.2?" },
  ]);
  expect(diagnostics[0]!.spans).toMatchObject([{ column: 7, length: 11 }]);
});

test("an override that mends a fault of the file leaves none", async () => {
  const text = "batch: x\ntanks:\n  bench: { volume: 6, surface: 450 cm2 }\n";
  expect((await readText(text)).diagnostics).toHaveLength(1);
  expect((await readText(text, { overrides: ["tanks.bench.volume=6 L"] })).diagnostics).toEqual([]);
});

test("what a command needs must be there", async () => {
  const read = await readGood("minimal.yaml", { needs: ["orders", "baths"] });
  expect(read.batch).toBeUndefined();
  expect(read.diagnostics.map((d) => d.message)).toEqual([
    "the batch has no orders, which this command needs",
    "the batch has no baths, which this command needs",
  ]);
  expect((await readText("batch: x\norders: []\n", { needs: ["orders"] })).diagnostics).toHaveLength(1);
});

test("standard input is named - and includes relative to where the command runs", async () => {
  const text = "batch: x\ninclude: fixtures/good/diamond-workshop.yaml\n";
  const { batch, locate } = await readText(text, { name: "-" });
  expect(batch!.tanks).toHaveLength(1);
  expect(locate(["batch"])).toMatchObject({ file: "-", line: 1 });
});

test("a file over 4 MiB is refused before it is parsed", async () => {
  const { diagnostics } = await readText(`batch: x\n# ${"x".repeat(4 * 1024 * 1024)}\n`);
  expect(diagnostics.map((d) => d.code)).toEqual(["too-large"]);
});

test("nesting of 100 000 brackets is refused, twice, in a file, in JSON and in an override", async () => {
  const deep = "[".repeat(100_000) + "]".repeat(100_000);
  for (const _ of [1, 2]) {
    expect((await readText(`orders: ${deep}\n`)).diagnostics.map((d) => d.code)).toEqual(["too-deep"]);
    const json = await readText(`{"orders": ${deep}}`, { name: "batch.json" });
    expect(json.diagnostics.map((d) => d.code)).toEqual(["too-deep"]);
    const set = await readText("batch: x\n", { overrides: [`orders=${deep}`] });
    expect(set.diagnostics.map((d) => d.code)).toEqual(["too-deep"]);
  }
});

test("a chain of aliases cannot nest deeper than a file may", async () => {
  const lines = ["batch: &a0 [x]", ...Array.from({ length: 200 }, (_, i) => `k${i}: &a${i + 1} [*a${i}]`)];
  const { diagnostics } = await readText(`${lines.join("\n")}\n`);
  expect(diagnostics.map((d) => d.code)).toEqual(["alias"]);
});

test("a fault of a reader of meshes or reflectance is placed at the key that asked", async () => {
  const text = `batch: x
tanks: { six: { volume: 6 L, surface: 450 cm2 } }
dyes:
  coral:
    dilution: 1:9
    temperature: 80 °C
    swatches:
      - { time: 30 s, reflectance: curve.csv }
parts:
  hook: { mesh: hook.stl }
baths:
  - { tank: six, dye: coral }
`;
  const bad = async () => failed(error("unreadable", [], "it cannot be read", "look at it"));
  const { diagnostics } = await readText(text, { measure: bad, reflectance: bad });
  expect(diagnostics.map((d) => [d.code, d.spans[0]!.line, d.spans[0]!.column])).toEqual([
    ["unreadable", 8, 36],
    ["unreadable", 10, 17],
  ]);
  const good = await readText(text, {
    measure: modelReader(() => block),
    reflectance: async () =>
      done({ kind: "reflectance", wavelengthsNm: [400, 700], reflectance: [0.1, 0.9] }),
  });
  expect(good.diagnostics).toEqual([]);
  expect(good.batch!.dyes[0]!.swatches[0]!.colour).toMatchObject({ kind: "reflectance" });
});

test("the JSON Schema that a file names is not read, in an included file as little", async () => {
  const files: Readonly<Record<string, string>> = {
    "shop.json": '{ "$schema": "./batch.schema.json", "currency": "EUR" }',
  };
  const { batch, diagnostics } = await readText(
    '{ "$schema": "./batch.schema.json", "batch": "kites", "include": "shop.json" }',
    { name: "kites.json", readFile: (name) => files[name]! },
  );
  expect(diagnostics).toEqual([]);
  expect(batch).toMatchObject({ name: "kites", currency: "EUR" });
});

test("one run reports the faults of several files, those of the main file first", async () => {
  const name = "fixtures/bad/include-fault.yaml";
  const { diagnostics } = await readText(readFile(name), { name });
  expect(diagnostics.map((d) => d.spans[0]!.file)).toEqual([
    "fixtures/bad/include-fault.yaml",
    "fixtures/bad/shared/fault.yaml",
    "fixtures/bad/shared/fault.yaml",
  ]);
});

test("a name is used as it is defined, two spaces and inherited names of objects included", async () => {
  const { batch, diagnostics } = await readText(`
batch: names
tanks: { "six  a": { volume: 6 L, capacity: 7 L, surface: 30 cm x 15 cm } }
dyes: { constructor: { dilution: 1:9, temperature: 80 °C, rate: 0.01 /s, notes: "two\\nlines" } }
baths: [{ tank: "six  a", dye: constructor }]
`);
  expect(diagnostics).toEqual([]);
  expect(batch!.baths[0]).toMatchObject({ tank: { name: "six  a" }, dye: { name: "constructor" } });
});

test("names that every object has can be defined, and defining one in two files is a fault", async () => {
  const files: { readonly [name: string]: string } = {
    "one.yaml": "parts: { valueOf: { mass: 6 g, area: 40 cm2 } }",
    "two.yaml": "parts: { constructor: { mass: 6 g, area: 40 cm2 }, toString: { mass: 6 g, area: 40 cm2 } }",
    "again.yaml": "parts: { valueOf: { mass: 7 g, area: 40 cm2 } }",
  };
  const including = (list: string) =>
    readText(`batch: names\ninclude: [${list}]\n`, { readFile: (name) => files[name]! });
  const { batch, diagnostics } = await including("one.yaml, two.yaml");
  expect(diagnostics).toEqual([]);
  expect(batch!.parts.map(({ name }) => name)).toEqual(["valueOf", "constructor", "toString"]);
  expect((await including("one.yaml, again.yaml")).diagnostics).toMatchObject([{ code: "defined-twice" }]);
});

test("a number that is used as a name is taken as written, in a file, in lists, through an alias and in a change", async () => {
  const text = `
batch: 2026.10
tanks: { 1.10: { volume: 6 L, capacity: 7 L, surface: 30 cm x 15 cm }, 1.1: { volume: 5 L, surface: 300 cm2 } }
dyes: { 007: { dilution: 1:9, temperature: 80 °C, rate: 0.01 /s, notes: 1e3 } }
parts: { 0x1F: { mass: 6 g, area: 40 cm2, mesh: 3.0 } }
shades: { pale: { dye: 007, time: 30 s } }
baths: [{ tank: &tank 1.10, dye: 007 }, { tank: *tank, dye: 007 }]
orders: [{ part: 0x1F, shade: pale, quantity: 0x10 }]
`;
  const { spec, diagnostics } = await readText(text.replace(", mesh: 3.0", ""), {
    overrides: ["orders.0={ part: 0x1F, shade: pale, quantity: 12.0 }", "baths.1.tank=1.1"],
  });
  expect(diagnostics).toEqual([]);
  expect(spec!.batch).toBe("2026.10");
  expect(spec!.baths.map(({ tank }) => tank)).toEqual(["1.10", "1.1"]);
  expect(spec!.baths[0]!.dye).toBe("007");
  expect(spec!.dyes["007"]!.notes).toBe("1e3");
  expect(spec!.orders[0]).toMatchObject({ part: "0x1F", quantity: 12 });
  const changed = await readText(text.replace(", mesh: 3.0", ""), { overrides: ["baths.0.tank=1.10"] });
  expect(changed.spec!.baths.map(({ tank }) => tank)).toEqual(["1.10", "1.10"]);
  const asked: string[] = [];
  await readText(text, {
    measure: async (file) => {
      asked.push(file);
      return failed(error("mesh", [], "none"));
    },
  });
  expect(asked).toEqual(["3.0"]);
});

test("a number below a key that no map has, though every object does, is refused as an unknown key", async () => {
  const { diagnostics } = await readText("batch: x\nroom: { constructor: { x: 1.10 } }\nvalueOf: [1.10]\n");
  expect(diagnostics.map(({ code }) => code)).toEqual(["unknown-key", "unknown-key"]);
});
