// Start-up of the built command against bare node, in one interleaved series: medians and their differences.
// Use: node test/bench/start-up.mjs [ROUNDS]; needs `npm run build` first.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const rounds = Number(process.argv[2] ?? 20);
const bundle = fileURLToPath(new URL("../../dist/dipwright.js", import.meta.url));
const restock = fileURLToPath(new URL("../../examples/restock.yaml", import.meta.url));
const makeUp = ["mix", "--volume", "6L", "--dilution", "1:9", "--temperature", "80C"];
const series = {
  "node -e 0": ["-e", "0"],
  "--version": [bundle, "--version"],
  "--help": [bundle, "--help"],
  mix: [bundle, ...makeUp],
  "mix, csv": [bundle, ...makeUp, "--format", "csv"],
  "mix, json": [bundle, ...makeUp, "--format", "json"],
  "bad usage": [bundle, "mxi"],
  check: [bundle, "check", restock],
  plan: [bundle, "plan", restock],
};
const times = Object.fromEntries(Object.keys(series).map((name) => [name, []]));
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

for (let round = -2; round < rounds; round++)
  for (const [name, args] of Object.entries(series)) {
    const start = process.hrtime.bigint();
    spawnSync(process.execPath, args, { stdio: ["ignore", "pipe", "pipe"] });
    if (round >= 0) times[name].push(Number(process.hrtime.bigint() - start) / 1e6);
  }
const bare = median(times["node -e 0"]);
for (const [name, values] of Object.entries(times))
  console.log(
    `${name.padEnd(12)} ${median(values).toFixed(1).padStart(6)} ms  ${(median(values) - bare).toFixed(1).padStart(6)} ms over bare node`,
  );
