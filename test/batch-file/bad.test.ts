import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type BatchInput, readBatch } from "../../src/batch-file/read-batch.js";
import { modelReader } from "../../src/batch-file/resources/model-reader.js";
import { reflectanceReader } from "../../src/batch-file/resources/reflectance.js";
import { renderText } from "../../src/diagnostics/render-text.js";

const root = new URL("../../", import.meta.url).pathname;
const folder = "fixtures/bad";
const files = readdirSync(join(root, folder)).filter((name) => /\.(yaml|json)$/.test(name));

/** What is given beside a file, where the fault lies there. */
const beside: { readonly [file: string]: Partial<BatchInput> } = {
  "needs.yaml": { needs: ["parts", "shades", "baths", "orders"] },
  "needs-form.yaml": { needs: ["parts", "orders"] },
  "set-form.yaml": {
    overrides: ["tanks.bench.volume", "=6 L", 'tanks."bench.volume=6 L', 'tanks."bench"s.volume=6 L'],
  },
  "set-unknown.yaml": {
    overrides: [
      "tanks.bensh.volume=7 L",
      "tanks.bench.volum=7 L",
      "tank.bench.volume=7 L",
      "tanks.bench.volume.size=7 L",
      "tanks..volume=7 L",
    ],
  },
  "set-list.yaml": {
    overrides: ["baths.2.topUp=level", "baths.first.topUp=level", "baths=[]", "baths.0.topUp=level"],
  },
  "set-include.yaml": { overrides: ["include=[more.yaml]", "include.0=more.yaml"] },
  "set-value.yaml": { overrides: ["tanks.bench.cover={ lid", "tanks.bench.volume=", "baths.0.topUp=*rule"] },
  "set-unit.yaml": {
    overrides: ["tanks.bench.volume=7", "dyes.rust={ dilution: 1/10, temperature: 80 °C }"],
  },
};

const readBytes = (name: string): Uint8Array => readFileSync(join(root, name));
const readFile = (name: string): string => readFileSync(join(root, name), "utf8");

test("there are at least 60 broken batch files, each with what is said about it", () => {
  expect(files.length).toBeGreaterThanOrEqual(60);
  const recorded = readdirSync(join(root, folder)).filter((name) => name.endsWith(".expected.txt"));
  expect(recorded).toEqual(files.map((name) => `${name}.expected.txt`).sort());
});

test.each(files)("%s is refused with exactly the diagnostics that are recorded beside it", async (file) => {
  const name = `${folder}/${file}`;
  const expected = join(root, folder, `${file}.expected.txt`);
  const read = await readBatch({
    name,
    text: readFile(name),
    readFile,
    ...(file === "colour-no-reader.yaml" ? {} : { reflectance: reflectanceReader(readFile) }),
    ...(file === "part-mesh.yaml" ? {} : { measure: modelReader(readBytes) }),
    ...beside[file],
  });
  expect(read.batch).toBeUndefined();
  expect(read.spec).toBeUndefined();
  expect(read.diagnostics.some((d) => d.severity === "error")).toBe(true);
  for (const d of read.diagnostics) {
    expect(d.spans.length).toBeGreaterThan(0);
    expect(d.help).toBeTruthy();
  }
  const text = renderText(read.diagnostics);
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  if (process.env.RECORD === undefined) expect(existsSync(expected)).toBe(true);
  await expect(text).toMatchFileSnapshot(expected);
});
