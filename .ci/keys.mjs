// Writes what is made from the schema of the batch file: examples/KEYS.md and examples/batch.schema.json.
import { execFileSync } from "node:child_process";

const run = (...args) =>
  execFileSync(process.execPath, args, { cwd: new URL("../", import.meta.url), stdio: "inherit" });
run(".ci/build.mjs");
run("dist/dipwright.js", "keys", "--out", "examples/KEYS.md");
run("dist/dipwright.js", "schema", "--out", "examples/batch.schema.json");
