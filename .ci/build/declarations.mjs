import { execFile } from "node:child_process";
import { readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { dist, root } from "./places.mjs";

const tsc = join(dirname(createRequire(import.meta.url).resolve("typescript/package.json")), "bin/tsc");
const importing = /\b(?:from|import\()\s*"(\.[^"]+)"/g;

/** Declaration files that one of them imports, itself included. */
function reachedFrom(file, reached = new Set()) {
  if (reached.has(file)) return reached;
  reached.add(file);
  for (const [, target] of readFileSync(file, "utf8").matchAll(importing))
    reachedFrom(join(dirname(file), target.replace(/\.js$/, ".d.ts")), reached);
  return reached;
}

/** Writes the declarations of what src/index.ts exports, and no others. */
export async function buildDeclarations() {
  const folder = `${dist}library`;
  await promisify(execFile)(process.execPath, [tsc, "-p", "tsconfig.library.json"], { cwd: root });
  const shown = reachedFrom(join(folder, "index.d.ts"));
  for (const name of readdirSync(folder, { recursive: true }))
    if (name.endsWith(".d.ts") && !shown.has(join(folder, name))) rmSync(join(folder, name));
}
