// Checks that dependencies point one way: cli -> report, log, batch-file -> diagnostics, core; that core reaches nothing
// outside the program and its folders import only folders before them in `coreOrder`; that only cli uses modules of
// Node; that no package is loaded by import(), since a CommonJS one then has other names once it is bundled (a module
// of ours that imports it is loaded so instead); and that there are no circles.
// Use: node .ci/dependencies.mjs [FOLDER]; prints what is wrong, a line each; exit status 1 if anything is.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, normalize, relative, resolve, sep } from "node:path";

const root = resolve(process.argv[2] ?? "src");
const allowed = {
  core: ["core"],
  diagnostics: ["diagnostics", "core"],
  "batch-file": ["batch-file", "log", "diagnostics", "core"],
  log: ["log", "diagnostics", "core"],
  report: ["report", "diagnostics", "core"],
  cli: ["cli", "report", "log", "batch-file", "diagnostics", "core"],
  "index.ts": ["core", "batch-file", "log", "diagnostics"],
};
/** Folders of core; each imports itself and those before it. Files beside them import none of them. */
const coreOrder = [
  "model",
  "quantity",
  "maths",
  "csv",
  "colour",
  "uptake",
  "bath",
  "recipe",
  "part",
  "cost",
  "plan",
  "offer",
  "week",
  "quality",
];
const impure =
  /\b(Date\.now|new Date\(\)|Math\.random|performance\.now|console\.|process\.|globalThis\.|setTimeout)/;
const importing =
  /(?:^|[\n;])\s*(?:import|export)\b[^"';]*?from\s*["']([^"']+)["']|(?:^|[\n;])\s*import\s*["']([^"']+)["']|\bimport\(\s*["']([^"']+)["']\s*\)/g;

const files = readdirSync(root, { recursive: true })
  .map((f) => join(root, f))
  .filter((f) => f.endsWith(".ts") && statSync(f).isFile())
  .sort();
const area = (file) => relative(root, file).split(sep)[0];
const coreFolder = (file) => relative(join(root, "core"), file).split(sep).slice(0, -1)[0];
/** Why a file of core may not import another; undefined where it may. */
const againstOrder = (file, to) => {
  const [at, target] = [coreFolder(file), coreFolder(to)];
  if (target === undefined) return undefined;
  if (at === undefined) return `core/${relative(join(root, "core"), file)} must not import core/${target}`;
  return coreOrder.indexOf(target) <= coreOrder.indexOf(at)
    ? undefined
    : `core/${at} must not import core/${target}`;
};
const faults = [];
const graph = new Map();

for (const file of files) {
  const name = relative(root, file);
  const from = area(file);
  const text = readFileSync(file, "utf8");
  const edges = [];
  if (!(from in allowed)) faults.push(`${name}: is in no known part of the structure`);
  if (from === "core" && coreFolder(file) !== undefined && !coreOrder.includes(coreFolder(file)))
    faults.push(`${name}: core/${coreFolder(file)} is not in the order of core's folders`);
  for (const [, a, b, c] of text.matchAll(importing)) {
    const target = a ?? b ?? c;
    if (target.startsWith(".")) {
      const to = normalize(join(dirname(file), target)).replace(/\.js$/, ".ts");
      if (!(allowed[from] ?? []).includes(area(to)))
        faults.push(`${name}: ${from} must not import ${relative(root, to)}`);
      if (!files.includes(to)) faults.push(`${name}: imports ${target}, which does not exist`);
      if (from === "core" && area(to) === "core") {
        const against = againstOrder(file, to);
        if (against !== undefined) faults.push(`${name}: ${against}`);
      }
      edges.push(to);
    } else if (target.startsWith("node:")) {
      if (from !== "cli") faults.push(`${name}: only cli uses modules of Node, not ${from} (${target})`);
    } else if (c !== undefined) faults.push(`${name}: import("${target}") of a package`);
  }
  graph.set(file, edges);
  if (from === "core") {
    text.split("\n").forEach((line, i) => {
      const code = line.replace(/\/\/.*$/, "");
      if (!/^\s*\*/.test(line) && impure.test(code))
        faults.push(`${name}:${i + 1}: core must stay pure: ${code.trim()}`);
    });
  }
}

const state = new Map();
const visit = (file, trail) => {
  if (state.get(file) === "done" || !graph.has(file)) return;
  if (state.get(file) === "open") {
    const circle = [...trail.slice(trail.indexOf(file)), file].map((f) => relative(root, f));
    faults.push(`circle: ${circle.join(" -> ")}`);
    return;
  }
  state.set(file, "open");
  for (const next of graph.get(file)) visit(next, [...trail, file]);
  state.set(file, "done");
};
for (const file of files) visit(file, []);

if (faults.length > 0) console.log(faults.join("\n"));
console.log(`dependencies: ${files.length} files read, ${faults.length} faults`);
process.exitCode = faults.length > 0 ? 1 : 0;
