// Start-up of the built command beside bare node, in one interleaved series: medians, and the median of the ratio of
// each run to the bare one of its round. A machine at work elsewhere moves the times more than the ratios.
// Use: node test/bench/start-up.mjs [ROUNDS] [NODE...]; needs `npm run build` first. NODE: other executables of Node,
// such as node_modules/node/bin/node of the npm package `node`; each is warmed first, so that its compile cache is there.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const [rounds = "20", ...nodes] = process.argv.slice(2);
const command = fileURLToPath(new URL("../../dist/dipwright.js", import.meta.url));
const restock = fileURLToPath(new URL("../../examples/restock.yaml", import.meta.url));
const makeUp = ["mix", "--volume", "6L", "--dilution", "1:9", "--temperature", "80C"];
const series = {
  "node -e 0": ["-e", "0"],
  "--version": [command, "--version"],
  "--help": [command, "--help"],
  mix: [command, ...makeUp],
  "mix, csv": [command, ...makeUp, "--format", "csv"],
  "bad usage": [command, "mxi"],
  check: [command, "check", restock],
  plan: [command, "plan", restock],
  "plan, json": [command, "plan", restock, "--format", "json"],
};
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

for (const node of nodes.length > 0 ? nodes : [process.execPath]) {
  const times = Object.fromEntries(Object.keys(series).map((name) => [name, []]));
  for (let round = -2; round < Number(rounds); round++)
    for (const [name, args] of Object.entries(series)) {
      const start = process.hrtime.bigint();
      spawnSync(node, args, { stdio: ["ignore", "pipe", "pipe"] });
      if (round >= 0) times[name].push(Number(process.hrtime.bigint() - start) / 1e6);
    }
  console.log(`Node ${spawnSync(node, ["--version"], { encoding: "utf8" }).stdout.trim()}`);
  const bare = times["node -e 0"];
  for (const [name, values] of Object.entries(times))
    console.log(
      `${name.padEnd(12)} ${median(values).toFixed(1).padStart(6)} ms  ${(median(values) - median(bare)).toFixed(1).padStart(6)} ms over bare node  ${median(values.map((ms, i) => ms / bare[i])).toFixed(2)} times`,
    );
}
