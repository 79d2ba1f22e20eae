// A sweep of 1,000 combinations of examples/restock.yaml (tank size, dilution, drain, lid): the whole command in a
// process of its own, beside a floor from the same run, `node -e 0`; and in this process where the time goes: reading
// the file, checking and completing each combination, planning it. The floor of the second part is the planning of
// one batch as often. Exit status 1 where the command takes 5 s or more. Use: node test/bench/sweep.mjs [ROUNDS]
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { build } from "esbuild";

const rounds = Number(process.argv[2] ?? 5);
const root = new URL("../../", import.meta.url).pathname;
const vary = [
  "tanks.six.volume=5.2 L..6.1 L/10",
  "dyes.brick.dilution=9 %..11 %/5",
  "handling.drain=10 s..40 s/10",
  "tanks.six.cover=lid,balls",
];
const args = vary.flatMap((one) => ["--vary", one]);
const milliseconds = (work) => {
  const start = process.hrtime.bigint();
  const result = work();
  return { ms: Number(process.hrtime.bigint() - start) / 1e6, result };
};
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
const say = (name, times, more = "") =>
  console.log(
    `${name.padEnd(34)} ${median(times).toFixed(0).padStart(6)} ms median of ${times.length}${more}`,
  );

const whole = [];
const floor = [];
let rows = 0;
for (let i = 0; i < rounds; i++) {
  floor.push(milliseconds(() => execFileSync(process.execPath, ["-e", "0"])).ms);
  const { ms, result } = milliseconds(() =>
    execFileSync(
      process.execPath,
      [`${root}dist/dipwright.js`, "sweep", "restock.yaml", ...args, "--format", "csv"],
      { cwd: `${root}examples`, encoding: "utf8" },
    ),
  );
  whole.push(ms);
  const lines = result.trim().split("\n");
  rows = lines.filter((line) => !/^(\s*#|")/.test(line)).length - 1;
}
say("floor: node -e 0", floor);
say("sweep, whole command", whole, `, ${rows} rows`);

const bundled = await build({
  stdin: {
    contents: `export { Workshop } from "./src/batch-file/workshop.js";
      export { planBatch } from "./src/core/plan/plan.js";
      export { combinations } from "./src/core/maths/sampling/combinations.js";
      export { readVaried } from "./src/cli/sweep/vary.js";`,
    resolveDir: root,
  },
  bundle: true,
  format: "cjs",
  platform: "node",
  write: false,
});
// The YAML reader is CommonJS, which a data: address cannot hold.
const made = { exports: {} };
new Function("module", "exports", "require", bundled.outputFiles[0].text)(
  made,
  made.exports,
  createRequire(import.meta.url),
);
const { Workshop, planBatch, combinations, readVaried } = made.exports;
const readFile = (name) => readFileSync(`${root}examples/${name}`, "utf8");
const openIn = (workshop) => workshop.open({ name: "restock.yaml", text: readFile("restock.yaml") });
const timed = async (work) => {
  const start = process.hrtime.bigint();
  const result = await work();
  return { ms: Number(process.hrtime.bigint() - start) / 1e6, result };
};
const parts = { read: [], check: [], plan: [], again: [] };
const varied = await Promise.all(vary.map(readVaried));
const chosen = [...combinations(varied.map((one) => one.varied.values))];
for (let i = 0; i < rounds; i++) {
  const workshop = new Workshop({ readFile });
  const { work: shared } = workshop;
  const open = await timed(() => openIn(workshop));
  parts.read.push(open.ms);
  const settled = await timed(async () => {
    const all = [];
    for (const values of chosen) all.push(await open.result.settle(values.map(({ change }) => change)));
    return all;
  });
  parts.check.push(settled.ms);
  const plans = await timed(() =>
    settled.result.map(({ batch }) => planBatch(batch, { shared, lives: "own" }).ok),
  );
  parts.plan.push(plans.ms);
  const [first] = settled.result;
  parts.again.push(
    (await timed(() => chosen.map(() => planBatch(first.batch, { shared, lives: "own" }).ok))).ms,
  );
}
say("  reading the file once", parts.read);
say(`  checking ${chosen.length} combinations`, parts.check);
say(`  planning ${chosen.length} combinations`, parts.plan);
say("  floor: planning one as often", parts.again);
if (median(whole) >= 5000) process.exitCode = 1;
