import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Io } from "../../src/cli/io.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const root = new URL("../../", import.meta.url).pathname;
const examples = join(root, "examples");
const minimal = readFileSync(join(examples, "minimal.yaml"), "utf8");
/** A grey that reflects 40 % at every wavelength. */
const curve = `wavelength_nm,reflectance\n${Array.from({ length: 31 }, (_, i) => `${400 + 10 * i},0.4\n`).join("")}`;

/** The minimal batch with other parts or dyes, its models and curves beside it, and the files that were read. */
function io(text: string): Partial<Io> & { readonly reads: string[] } {
  const reads: string[] = [];
  const readFile = async (path: string): Promise<Uint8Array> => {
    reads.push(path);
    if (path.endsWith("batch.yaml") || path.endsWith("again.yaml")) return Buffer.from(text);
    if (path.endsWith(".csv")) return Buffer.from(curve);
    return readFileSync(join(root, "fixtures/models", path.replace(/^.*\//, "")));
  };
  return { readFile, reads };
}
const withPart = (part: string): string => minimal.replace(/clip: \{.*\}/, `clip: ${part}`);

for (const [format, ending] of [
  ["text", "txt"],
  ["json", "json"],
] as const)
  test(`plan gives the recorded ${format} of the example that is measured from a model`, async () => {
    const { status, out, err } = await runFake(
      ["plan", "trays.yaml", "--format", format],
      folderIo(examples),
    );
    expect([status, err]).toEqual([0, ""]);
    await expect(out).toMatchFileSnapshot(`golden/plan/trays.${ending}`);
  });

test("plan gives the same for a part measured from its model as for one with the figures written", async () => {
  const plan = async (part: string) => {
    const { out } = await runFake(["plan", "batch.yaml", "--format", "json"], io(withPart(part)));
    const { assumptions: _, ...rest } = JSON.parse(out);
    // Both ways to the same figures, but for the last digits.
    return JSON.parse(JSON.stringify(rest), (_, value) =>
      typeof value === "number" ? Number(value.toPrecision(12)) : value,
    );
  };
  expect(await plan("{ mesh: block.stl }")).toEqual(
    await plan("{ mass: 5.58 g, area: 22 cm2, volume: 6 cm3 }"),
  );
});

test("plan says that the density of a measured part is assumed, and not once it is written", async () => {
  const assumed = async (part: string) => {
    const { out } = await runFake(["plan", "batch.yaml", "--format", "json"], io(withPart(part)));
    return JSON.parse(out).assumptions.map(({ code }: { code: string }) => code);
  };
  expect(await assumed("{ mesh: block.stl }")).toContain("assumed-density");
  expect(await assumed("{ mesh: block.stl, density: 0.95 g/cm3 }")).not.toContain("assumed-density");
  expect(await assumed("{ mesh: block.stl, mass: 5.6 g }")).not.toContain("assumed-density");
});

test("cost over several batches reads a model that they share once", async () => {
  const files = io(withPart("{ mesh: block.stl }"));
  const { status } = await runFake(["cost", "batch.yaml", "again.yaml"], files);
  expect([status, files.reads.filter((path) => path.endsWith(".stl"))]).toEqual([0, ["block.stl"]]);
});

test("a command that needs no parts names a broken model all the same, with file and byte", async () => {
  const { status, out, err } = await runFake(
    ["check", "batch.yaml"],
    io(withPart("{ mesh: parts/cut-off.stl }")),
  );
  expect(status).toBe(2);
  expect(out).not.toContain("nothing is wrong");
  expect(err.replace(/\n {8,}/g, " ")).toContain(
    "batch.yaml:12:17\nerror[mesh-truncated]: parts/cut-off.stl: byte 80: the header announces 12 triangles",
  );
});

test("advice on light and thin parts is not a warning: --strict passes", async () => {
  const { status, out } = await runFake(["plan", "trays.yaml", "--strict"], folderIo(examples));
  expect(status).toBe(0);
  expect(out).toContain("They float until wetted: tray.");
  expect(out).toContain("soft when hot: tray (about 1.2 mm)");
});

test("plan gives no advice on parts that are heavy and thick", async () => {
  const heavy = io(withPart("{ mesh: block.stl, density: 1.14 g/cm3 }"));
  const { out } = await runFake(["plan", "batch.yaml", "--format", "json"], heavy);
  expect(JSON.parse(out).advice).toEqual([]);
  const { out: text } = await runFake(
    ["plan", "batch.yaml"],
    io(withPart("{ mesh: block.stl, density: 1.14 g/cm3 }")),
  );
  expect(text).not.toMatch(/float|Thin walls/);
});

test("a swatch may be a reflectance curve in a file beside the batch", async () => {
  const dyed = minimal.replace(
    /brick: \{.*\}/,
    "brick: { dilution: 1:9, temperature: 80 °C, base: white, swatches: [{ time: 60 s, reflectance: curves/one.csv }] }",
  );
  const files = io(`${dyed}\nbases: { white: { lab: [93.0, -0.3, 0.6] } }\n`);
  const { status, out, err } = await runFake(["shade", "work/batch.yaml", "--format", "json"], files);
  expect([status, err.match(/error.*/)?.[0]]).toEqual([0, undefined]);
  expect(files.reads).toContain("work/curves/one.csv");
  // A curve that is flat has no hue under any light, and the swatch's own time gives its own colour.
  const at60 = JSON.parse(out).curve.find(({ seconds }: { seconds: number }) => seconds === 60);
  expect(at60.lab[0]).toBeCloseTo(116 * Math.cbrt(0.4) - 16, 3);
  expect(Math.hypot(at60.lab[1], at60.lab[2])).toBeLessThan(0.02);
});
