import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { widthOf } from "../../src/report/format/wrap.js";
import { binaryStl, threeMf } from "../core/part/tools/files.js";
import { box, moved, together } from "../core/part/tools/solids.js";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const root = new URL("../../", import.meta.url).pathname;
const examples = join(root, "examples");
const bytes = (path: string): Uint8Array => readFileSync(join(root, path));

/** Files of fixtures/models by their bare names, those of the examples by their path there. */
const files = {
  ...folderIo(examples),
  readFile: async (path: string): Promise<Uint8Array> =>
    readFileSync(
      path.includes("/") || path.endsWith(".yaml")
        ? join(examples, path)
        : join(root, "fixtures/models", path),
    ),
};
const measure = (...args: string[]) => runFake(["measure", ...args], files);
const codes = (err: string): string[] =>
  [...err.matchAll(/^(?:error|warning)\[([\w-]+)\]/gm)].map((match) => match[1]!);

const mixed = ["models/tray.stl", "hollow.stl", "open.stl", "cut-off.stl", "block-inches.stl"];
for (const [format, ending] of [
  ["text", "txt"],
  ["json", "json"],
  ["csv", "csv"],
  ["tsv", "tsv"],
  ["markdown", "md"],
] as const) {
  test(`measure gives the recorded ${format} of good, doubtful and broken files, with status 2`, async () => {
    const { status, out, err } = await measure(...mixed, "--format", format);
    expect(status).toBe(2);
    expect(codes(err)).toEqual(["mesh-cavity", "mesh-open", "mesh-truncated", "mesh-unit"]);
    await expect(out).toMatchFileSnapshot(`golden/measure/mixed.${ending}`);
  });

  test(`measure gives the recorded ${format} of parts in a tank`, async () => {
    const { status, out, err } = await measure(
      ...["models/tray.stl", "block.stl", "one-turned.stl", "--spec", "minimal.yaml", "--format", format],
    );
    expect([status, codes(err)]).toEqual([0, ["mesh-turned"]]);
    await expect(out).toMatchFileSnapshot(`golden/measure/in-tank.${ending}`);
  });
}

test("measure marks the figures of bodies that are there twice or touch as doubtful", async () => {
  const { out, err } = await measure("twice.stl", "touching.stl", "--spec", "minimal.yaml");
  expect(codes(err)).toEqual(["mesh-doubled", "mesh-shared-face"]);
  expect(out).toMatch(/twice.stl +yes +44.0 \? +12.0 \? +11.2 \?/);
  expect(out).toMatch(/touching.stl +yes +44.0 \? +12.0 +11.2 /);
  expect(out).toMatch(/twice.stl +\? +no volume to trust +\?/);
});

for (const columns of [60, 80])
  test(`measure keeps every line within ${columns} columns`, async () => {
    const { out } = await runFake(["measure", ...mixed, "--spec", "minimal.yaml"], { ...files, columns });
    for (const line of out.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(columns);
  });

test("measure gives one row a file with the columns that spreadsheets rely on", async () => {
  const { status, out, err } = await measure("block.stl", "hollow.stl", "--format", "csv", "--quiet");
  expect([status, err]).toEqual([0, ""]);
  const rows = parse(out, { columns: true }) as Record<string, string>[];
  expect(Object.keys(rows[0]!)).toEqual(
    "file,format,triangles,shells,closed,area_cm2,volume_cm3,mass_g,box_x_mm,box_y_mm,box_z_mm,warnings".split(
      ",",
    ),
  );
  expect(rows[0]).toMatchObject({
    file: "block.stl",
    closed: "yes",
    triangles: "12",
    mass_g: "5.58000",
    warnings: "",
  });
  expect(rows[1]).toMatchObject({ shells: "2", area_cm2: "27.5000", volume_cm3: "5.25000" });
  expect(rows[1]!.warnings).toContain("5.5 cm2 of the area stay dry");
});

test("measure reads a file from stdin, in the unit and at the density asked for", async () => {
  const { status, out } = await runFake(
    ["measure", "-", "--unit", "in", "--density", "1010kg/m3", "--format", "json"],
    { readStdin: async () => bytes("fixtures/models/block-inches.stl") },
  );
  expect(status).toBe(0);
  const report = JSON.parse(out);
  expect(report).toMatchObject({
    schema: "dipwright/measure@1",
    densityGPerCm3: 1.01,
    densityAssumed: false,
  });
  const [file] = report.files;
  expect(file).toMatchObject({ file: "-", unit: "inch", closed: true, volumeTrusted: true, warnings: [] });
  expect(file.volumeCm3).toBeCloseTo(6 * 0.8 ** 3, 5);
  expect(file.massG).toBeCloseTo(1.01 * file.volumeCm3, 9);
});

test("measure reads a 3MF file of two bodies by its own unit, and says that --unit is not used", async () => {
  const two = together(box([0, 0, 0], [30, 20, 10]), moved(box([0, 0, 0], [10, 10, 10]), [40, 0, 0]));
  const { status, out, err } = await runFake(["measure", "two.3mf", "--unit", "inch", "--format", "json"], {
    readFile: async () => threeMf(two),
  });
  expect([status, codes(err)]).toEqual([0, ["mesh-unit"]]);
  const [file] = JSON.parse(out).files;
  expect(file).toMatchObject({ format: "3mf", unit: "mm", shells: 2, closed: true });
  expect([file.areaCm2, file.volumeCm3]).toEqual([expect.closeTo(28, 9), expect.closeTo(7, 9)]);
});

test("measure says parts a load, which limit binds, and what one part carries out, marked where that is assumed", async () => {
  const inTank = async (...args: string[]) => {
    const { out } = await measure("block.stl", "--format", "json", ...args);
    return JSON.parse(out).files[0].inTank;
  };
  // 6 L at 20 L/kg take 300 g: 53 parts of 5.58 g. A part has 0.22 dm2.
  expect(await inTank("--spec", "minimal.yaml")).toEqual({
    tank: "six",
    partsPerLoad: 53,
    boundBy: "liquorRatio",
    carriedOutMl: expect.closeTo(0.8 * 0.22, 12),
    dragOutMlPerDm2: 0.8,
    restsOnAssumed: ["dragOut"],
  });
  // 6.4 L less 5 % leave 80 mL over 6 L: 13 parts of 6 cm3.
  expect(
    await inTank("--spec", "restock.yaml", "--tank", "six", "--set", "tanks.six.capacity=6.4 L"),
  ).toMatchObject({ partsPerLoad: 13, boundBy: "freeboard", restsOnAssumed: [], dragOutMlPerDm2: 0.9 });
});

test("measure counts a closed cavity as dry and as displaced where a tank is asked for", async () => {
  const { out } = await measure("hollow.stl", "--spec", "minimal.yaml", "--format", "json");
  const [{ inTank }] = JSON.parse(out).files;
  // 5.25 cm3 of material weigh 4.8825 g; the wetted surface is that of the block.
  expect(inTank).toMatchObject({ partsPerLoad: 61, carriedOutMl: expect.closeTo(0.8 * 0.22, 12) });
});

test("measure names no load size for a part whose volume is not to be trusted", async () => {
  const { out } = await measure("open.stl", "--spec", "minimal.yaml", "--format", "json");
  const [file] = JSON.parse(out).files;
  expect(file.inTank).toMatchObject({ partsPerLoad: null, boundBy: null });
});

test("measure gives 1 for a doubtful file under --strict, and 2 with nothing written where no file can be measured", async () => {
  expect((await measure("hollow.stl")).status).toBe(0);
  expect((await measure("hollow.stl", "--strict")).status).toBe(1);
  const {
    status,
    out,
    err,
    files: written,
  } = await measure("cut-off.stl", "a-letter.stl", "--out", "rows.txt");
  expect([status, out, written.size, codes(err)]).toEqual([2, "", 0, ["mesh-truncated", "mesh-unknown"]]);
  expect(err.replace(/\n +/g, " ")).toContain("cut-off.stl: byte 80: the header announces 12 triangles");
});

test("measure refuses what it cannot understand, all of it at once", async () => {
  const both = await measure(
    "-",
    "-",
    "--unit",
    "yard",
    "--density",
    "0.93",
    "--tank",
    "six",
    "--set",
    "a=1",
  );
  expect([both.status, both.out]).toEqual([2, ""]);
  expect(codes(both.err)).toEqual(["unit-missing", "usage", "usage", "usage", "usage"]);
  const tank = await measure("block.stl", "--spec", "restock.yaml", "--tank", "sixx");
  expect([tank.status, codes(tank.err)]).toEqual([2, ["undefined-name"]]);
  expect(tank.err).toContain("did you mean six?");
  const several = await measure("block.stl", "--spec", "restock.yaml");
  expect([several.status, codes(several.err)]).toEqual([2, ["usage"]]);
  const missing = await runFake(["measure", "nowhere.stl"]);
  expect([missing.status, missing.err]).toEqual([
    2,
    "error[read]: nowhere.stl cannot be read: there is no such file\n",
  ]);
});

test("measure reads a file whose bytes do not begin at the start of their buffer", async () => {
  const whole = new Uint8Array(3 + 684);
  whole.set(binaryStl(box([0, 0, 0], [30, 20, 10])), 3);
  const { out } = await runFake(["measure", "-", "--format", "json"], {
    readStdin: async () => whole.subarray(3),
  });
  expect(JSON.parse(out).files[0].volumeCm3).toBeCloseTo(6, 9);
});
