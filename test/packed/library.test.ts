import { execFileSync, spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { runInNewContext } from "node:vm";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writeInputs } from "./inputs.js";
import { installPacked } from "./install.js";

let folder = "";
beforeAll(() => {
  folder = installPacked();
  writeInputs(folder);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A program of a user: reads a batch with a model, a 3MF file and curves, plans it and prices a colour. */
const program = `import { readFile } from "node:fs/promises";
import {
  type BatchRead,
  ciede2000,
  type Diagnostic,
  fillingsOf,
  type LogRow,
  measureMesh,
  modelReader,
  planBatch,
  readBatch,
  readLog,
  realBathOf,
  reflectanceReader,
  type Review,
  replayFilling,
  reviewLog,
  startFromLog,
  traceLoads,
  Workshop,
} from "dipwright";

const text = (name: string): Promise<string> => readFile(name, "utf8");
const read: BatchRead = await readBatch({
  name: "models.yaml",
  text: await text("models.yaml"),
  readFile: text,
  needs: ["baths", "orders"],
  measure: modelReader((name) => readFile(name)),
  reflectance: reflectanceReader(text),
});
const said: readonly Diagnostic[] = read.diagnostics;
if (read.batch === undefined) throw new Error(JSON.stringify(said));
const workshop = new Workshop({ readFile: text });
const plan = planBatch(read.batch, workshop.work);
if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
const tile = await measureMesh(await readFile("tile.3mf"));
if (!tile.ok) throw new Error(JSON.stringify(tile.faults));
const wrong = await workshop.read({ name: "wrong", text: "tanks: { six: { volume: 6 } }" });
// @ts-expect-error What rests on a package stays inside.
wrong.spec;
const { log, diagnostics: ofLog } = readLog("baths.csv", await text("tiles.csv"));
if (log === undefined) throw new Error(JSON.stringify(ofLog));
const rows: readonly LogRow[] = log.rows;
const bath = read.batch.baths[0]!;
const real = realBathOf(read.batch, bath, workshop.work);
if (!real.ok) throw new Error(JSON.stringify(real.faults));
const followed = replayFilling(real.value.real, fillingsOf(rows, "six")[0]!, real.value.names);
const start = startFromLog(read.batch, bath, rows);
const reviewed = reviewLog(read.batch, rows);
if (!followed.ok || !start.ok || !reviewed.ok) throw new Error("the log");
const review: Review = reviewed.value;
const difference: number = ciede2000([50, 2.6772, -79.7751], [50, 0, -82.7485]);
console.log(
  JSON.stringify([
    plan.value.baths.length,
    Math.round(tile.value.areaCm2),
    wrong.diagnostics.map(({ code }) => code),
    difference.toFixed(4),
    followed.value.after.map(({ row: { event }, volumeL }) => [event, volumeL < 5.99]),
    [start.value.row, start.value.volumeL < followed.value.bath.volumeL + 1e-9],
    [review.baths[0]!.loads, traceLoads(rows, { part: "tile" }).length],
  ]),
);
`;

/** The compiler of this project, run in the folder: strict, and declarations of packages checked too; returns its faults. */
function compile(): string {
  writeFileSync(join(folder, "package.json"), JSON.stringify({ type: "module", dependencies: {} }));
  writeFileSync(join(folder, "program.ts"), program);
  const require = createRequire(import.meta.url);
  const types = dirname(dirname(require.resolve("@types/node/package.json")));
  writeFileSync(
    join(folder, "tsconfig.json"),
    JSON.stringify({
      compilerOptions: {
        module: "nodenext",
        target: "es2023",
        lib: ["es2023"],
        strict: true,
        exactOptionalPropertyTypes: true,
        noUncheckedIndexedAccess: true,
        skipLibCheck: false,
        typeRoots: [types],
        types: ["node"],
      },
      files: ["program.ts"],
    }),
  );
  const tsc = join(dirname(require.resolve("typescript/package.json")), "bin/tsc");
  return spawnSync(process.execPath, [tsc], { cwd: folder, encoding: "utf8" }).stdout;
}

test("a strict TypeScript program compiles against the installed types, and runs", () => {
  expect(compile()).toBe("");
  const printed = execFileSync(process.execPath, ["program.js"], { cwd: folder, encoding: "utf8" });
  // A tile of 60 x 40 x 4 mm; pair 1 of Sharma, Wu and Dalal (2005).
  expect(JSON.parse(printed)).toEqual([
    1,
    56,
    ["missing-key", "unit-missing"],
    "2.0425",
    [
      ["made-up", false],
      ["load", true],
    ],
    [3, true],
    [1, 1],
  ]);
});

const bundled = async (source: string, format: "esm" | "iife" = "esm"): Promise<string> => {
  const { outputFiles } = await build({
    stdin: { contents: source, resolveDir: folder },
    bundle: true,
    format,
    platform: "browser",
    minify: true,
    write: false,
    logLevel: "silent",
  });
  return outputFiles[0]!.text;
};

test("one formula, bundled for a browser, has less than 20 kB", async () => {
  const text = await bundled('export { ciede2000 } from "dipwright";');
  expect(text.length).toBeGreaterThan(500);
  expect(text.length).toBeLessThan(20_000);
});

test("bundled for a browser, the reader of batch files works without anything of Node", async () => {
  const text = await bundled(
    'import * as dipwright from "dipwright"; globalThis.dipwright = dipwright;',
    "iife",
  );
  // What a browser has and this needs; no process, Buffer or require.
  const page: { dipwright?: typeof import("../../src/index.js"); [name: string]: unknown } = {
    TextDecoder,
    TextEncoder,
  };
  runInNewContext(text, page);
  const { modelReader, planBatch, readBatch, reflectanceReader } = page.dipwright!;
  const file = (name: string): string => readFileSync(join(folder, name), "utf8");
  const { batch, diagnostics } = await readBatch({
    name: "models.yaml",
    text: file("models.yaml"),
    readFile: file,
    measure: modelReader(async (name) => readFileSync(join(folder, name))),
    reflectance: reflectanceReader(file),
  });
  expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(planBatch(batch!).ok).toBe(true);
  expect((await readBatch({ name: "", text: "a: [", readFile: file })).diagnostics).toMatchObject([
    { severity: "error" },
  ]);
});

test("nothing is installed beside dipwright, whose licences file names what it contains", () => {
  expect(readdirSync(join(folder, "node_modules")).filter((name) => !name.startsWith("."))).toEqual([
    "dipwright",
  ]);
  const licences = readFileSync(join(folder, "node_modules/dipwright/dist/LICENSES.txt"), "utf8");
  for (const name of ["commander", "fflate", "saxes", "yaml", "zod"])
    expect(licences).toMatch(new RegExp(`^${name} \\d`, "m"));
});
