import { expect, test } from "vitest";
import { modelReader } from "../../src/batch-file/resources/model-reader.js";
import { renderText } from "../../src/diagnostics/render-text.js";
import { readBytes, readFile, readText } from "./read.js";

const name = "fixtures/models/batch.yaml";

/** Reads parts, each a line below `parts:`, and counts how often each file was read. */
async function readParts(...parts: readonly string[]) {
  const reads: string[] = [];
  const read = await readText(`batch: kites\nparts:\n${parts.map((part) => `  ${part}\n`).join("")}`, {
    name,
    measure: modelReader((file) => {
      reads.push(file);
      return readBytes(file);
    }),
  });
  return { ...read, reads, codes: read.diagnostics.map(({ code, severity }) => `${severity} ${code}`) };
}

test("a model file gives area, volume, box and, at 0.93 g/cm3, an assumed mass", async () => {
  const { batch, codes } = await readParts("cleat: { mesh: block.stl }");
  expect(codes).toEqual([]);
  expect(batch!.parts[0]).toEqual({
    name: "cleat",
    areaDm2: expect.closeTo(0.22, 12),
    volumeCm3: expect.closeTo(6, 12),
    massG: expect.closeTo(5.58, 12),
    massAssumed: true,
    boxMm: [30, 20, 10],
    heatCapacityKjPerKgK: 1.7,
  });
});

test("a density that is written gives the mass, with its ±, and is not assumed", async () => {
  const { batch, spec } = await readParts("cleat: { mesh: block.stl, density: 1010 kg/m3 ± 2 % }");
  expect(batch!.parts[0]!.massG).toBeCloseTo(6.06, 12);
  expect(batch!.parts[0]).not.toHaveProperty("massAssumed");
  expect(spec!.parts.cleat!.mass!.plusMinus).toBeCloseTo(0.1212, 12);
});

test("a density without a model gives the volume from the mass", async () => {
  const { batch } = await readParts("cleat: { mass: 6.06 g, area: 22 cm2, density: 1.01 g/cm3 }");
  expect(batch!.parts[0]!.volumeCm3).toBeCloseTo(6, 12);
});

test("values beside a model win, without a word where they differ by 5 % or less", async () => {
  const { batch, codes } = await readParts(
    "cleat: { mesh: block.stl, mass: 5.8 g, area: 23.1 cm2, volume: 5.7 cm3 }",
  );
  expect(codes).toEqual([]);
  expect(batch!.parts[0]).toMatchObject({ massG: 5.8, areaDm2: 0.231, volumeCm3: 5.7 });
  const { codes: over } = await readParts("cleat: { mesh: block.stl, area: 23.11 cm2 }");
  expect(over).toEqual(["warning mesh-differs"]);
});

test("a weighed mass is not compared with the assumed density; a density that no plastic has is a warning", async () => {
  const codesAt = async (mass: string) =>
    (await readParts(`cleat: { mesh: block.stl, mass: ${mass} }`)).codes;
  for (const mass of ["1.81 g", "6.4 g", "17.9 g"]) expect(await codesAt(mass)).toEqual([]);
  for (const mass of ["1.79 g", "18.1 g"]) expect(await codesAt(mass)).toEqual(["warning mesh-density"]);
  const { codes } = await readParts("cleat: { mesh: block.stl, mass: 6.4 g, density: 0.93 g/cm3 }");
  expect(codes).toEqual(["warning mesh-differs"]);
});

test("a written volume gives the mass where that is not written", async () => {
  const { batch } = await readParts("cleat: { mesh: block.stl, volume: 6.2 cm3 }");
  expect(batch!.parts[0]!.massG).toBeCloseTo(6.2 * 0.93, 12);
});

test("unit: says what an STL is drawn in", async () => {
  for (const unit of ["inch", "in"]) {
    const { batch, codes } = await readParts(`cleat: { mesh: { file: block-inches.stl, unit: ${unit} } }`);
    expect(codes).toEqual([]);
    expect(batch!.parts[0]!.areaDm2).toBeCloseTo(0.22 * 0.64, 7);
    batch!.parts[0]!.boxMm!.forEach((side, i) => {
      expect(side).toBeCloseTo([24, 16, 8][i]!, 5);
    });
  }
});

test("a closed cavity stays dry, displaces and weighs nothing", async () => {
  const { batch, codes } = await readParts("cleat: { mesh: hollow.stl }");
  expect(codes).toEqual(["warning mesh-cavity"]);
  expect(batch!.parts[0]).toMatchObject({
    areaDm2: expect.closeTo(0.22, 12),
    volumeCm3: expect.closeTo(6, 12),
    massG: expect.closeTo(5.25 * 0.93, 12),
  });
});

test("bodies that touch stay dry between them, in what is taken from the model", async () => {
  const { batch, codes } = await readParts("cleat: { mesh: touching.stl }");
  expect(codes).toEqual(["warning mesh-shared-face"]);
  expect(batch!.parts[0]).toMatchObject({
    areaDm2: expect.closeTo(0.4, 12),
    volumeCm3: expect.closeTo(12, 12),
    massG: expect.closeTo(12 * 0.93, 12),
  });
});

test("a body that is there twice gives nothing: area, and mass or volume, must be written", async () => {
  for (const part of ["", ", area: 22 cm2", ", mass: 5.58 g", ", volume: 6 cm3"]) {
    const { batch, codes } = await readParts(`cleat: { mesh: twice.stl${part} }`);
    expect([batch, codes]).toEqual([undefined, ["error mesh-doubled"]]);
  }
  const { batch, codes } = await readParts("cleat: { mesh: twice.stl, area: 22 cm2, volume: 6 cm3 }");
  expect(codes).toEqual([]);
  expect(batch!.parts[0]).toMatchObject({ areaDm2: expect.closeTo(0.22, 12), volumeCm3: 6 });
});

test("an open model gives its area, once mass or volume is written", async () => {
  const without = await readParts("cleat: { mesh: open.stl }");
  expect([without.batch, without.codes]).toEqual([undefined, ["error mesh-open"]]);
  const weighed = await readParts("cleat: { mesh: open.stl, mass: 5.58 g }");
  expect(weighed.codes).toEqual(["warning mesh-open"]);
  expect(weighed.batch!.parts[0]).toMatchObject({
    massG: 5.58,
    areaDm2: expect.closeTo(0.19, 12),
    volumeCm3: expect.closeTo(6, 12),
  });
  const sunk = await readParts("cleat: { mesh: open.stl, volume: 6 cm3, area: 22 cm2 }");
  expect(sunk.codes).toEqual([]);
  expect(sunk.batch!.parts[0]!.massG).toBeCloseTo(5.58, 12);
});

test("a file that several parts name is read once, and faults of it are said at each", async () => {
  const { reads, diagnostics } = await readParts(
    "cleat: { mesh: inside-out.stl }",
    "wing: { mesh: ./inside-out.stl, mass: 5.6 g }",
    "spar: { mesh: block.stl }",
  );
  expect(reads).toEqual(["fixtures/models/inside-out.stl", "fixtures/models/block.stl"]);
  expect(diagnostics.map(({ code, spans }) => [code, spans[0]!.line])).toEqual([
    ["mesh-inverted", 3],
    ["mesh-inverted", 4],
  ]);
});

test("a file over 512 MiB is refused before it is measured", async () => {
  const { diagnostics } = await readText("batch: x\nparts: { cleat: { mesh: huge.stl } }\n", {
    measure: modelReader(() => ({ length: 512 * 1024 * 1024 + 1 }) as Uint8Array),
  });
  expect(diagnostics.map(({ code, message }) => [code, message])).toEqual([
    ["mesh-too-large", "huge.stl: it is larger than 512 MiB"],
  ]);
});

test("what is doubtful in a model is said as recorded, with file, byte or place, and both values", async () => {
  const file = "fixtures/models/doubts.yaml";
  const read = await readText(readFile(file), { name: file, measure: modelReader(readBytes) });
  expect(read.batch!.parts).toHaveLength(6);
  await expect(renderText(read.diagnostics)).toMatchFileSnapshot("../../fixtures/models/doubts.expected.txt");
});
