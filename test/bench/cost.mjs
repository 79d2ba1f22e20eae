// Batches a second and peak memory of `cost` over a folder of generated batches that share their includes, beside
// the time that reading and parsing the same files alone takes: with the yaml package, which is the measure, and with
// js-yaml, which `cost` reads them with; each in a process of its own, one after the other, start-up included. Memory should not grow with the number of batches.
// Use: node test/bench/cost.mjs [COUNT...]; needs `npm run build` first. Default 1000 10000.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { writeBatches } from "../../fixtures/generators/batches.mjs";

const counts = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [1000, 10_000];
const bundle = fileURLToPath(new URL("../../dist/dipwright.js", import.meta.url));
const parsers = {
  yaml: ["parse", import.meta.resolve("yaml")],
  "js-yaml": ["load", import.meta.resolve("js-yaml")],
};
const folder = mkdtempSync(join(tmpdir(), "dipwright-"));
const tell =
  "data:text/javascript,process.on('exit',()=>process.stderr.write('\\n'+JSON.stringify(process.resourceUsage())))";

/** What the parse of the same files takes: each batch, and each shared file once. */
const parseAlone = (parser) => `
  import { readdirSync, readFileSync } from "node:fs";
  import { join } from "node:path";
  import { ${parsers[parser][0]} as parse } from ${JSON.stringify(parsers[parser][1])};
  let keys = 0;
  for (const part of ["shared", "batches"])
    for (const name of readdirSync(part).sort()) keys += Object.keys(parse(readFileSync(join(part, name), "utf8"))).length;
  if (keys === 0) throw new Error("nothing was parsed");
`;

function timed(args, statuses) {
  const start = process.hrtime.bigint();
  const { stderr, status } = spawnSync(process.execPath, ["--import", tell, ...args], {
    cwd: folder,
    encoding: "utf8",
    stdio: ["ignore", "ignore", "pipe"],
    maxBuffer: 1 << 28,
  });
  const seconds = Number(process.hrtime.bigint() - start) / 1e9;
  if (!statuses.includes(status)) throw new Error(`status ${status}: ${stderr.slice(-2000)}`);
  const { maxRSS, userCPUTime, systemCPUTime } = JSON.parse(stderr.slice(stderr.lastIndexOf("\n")));
  return { seconds, cpu: (userCPUTime + systemCPUTime) / 1e6, peak: maxRSS / 1024 };
}

const shown = (what, { seconds, cpu, peak }, count) =>
  `${String(count).padStart(6)} batches  ${what.padEnd(13)} ${seconds.toFixed(2).padStart(6)} s  ${cpu.toFixed(2).padStart(6)} s of processor  ${(count / seconds).toFixed(0).padStart(5)} batches/s  peak ${peak.toFixed(0)} MiB`;

try {
  for (const count of counts) {
    writeBatches(folder, count, 1);
    // Twice in turns, the better of each: other work on the machine only ever adds.
    const better = (a, b) => (a === undefined || b.cpu < a.cpu ? b : a);
    const alone = {};
    const found = {};
    for (let round = 0; round < 2; round++) {
      for (const parser of Object.keys(parsers))
        alone[parser] = better(alone[parser], timed(["--input-type=module", "-e", parseAlone(parser)], [0]));
      for (const format of ["csv", "json"]) {
        const args = [bundle, "cost", "batches", "--format", format, "--quiet", "--out", `costs.${format}`];
        found[format] = better(found[format], timed(args, [0, 1]));
      }
    }
    for (const [parser, result] of Object.entries(alone))
      console.log(shown(`${parser} alone`, result, count));
    for (const [format, result] of Object.entries(found))
      console.log(
        `${shown(`cost, ${format}`, result, count)}  ${(result.seconds / alone.yaml.seconds).toFixed(2)} times yaml (processor ${(result.cpu / alone.yaml.cpu).toFixed(2)})`,
      );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
