// Time and peak memory of `compare --pairs` by the number of rows; the columns of memory should not grow.
// Use: node test/bench/compare-pairs.mjs [ROWS...]; needs `npm run build` first.
import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const counts = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [100_000, 1_000_000];
const bundle = fileURLToPath(new URL("../../dist/dipwright.js", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "dipwright-"));
const tell =
  "data:text/javascript,process.on('exit',()=>process.stderr.write(JSON.stringify(process.resourceUsage())))";

let seed = 1;
const random = () => {
  seed = (seed * 1103515245 + 12345) % 2 ** 31;
  return seed / 2 ** 31;
};
function make(path, rows) {
  const file = openSync(path, "w");
  let text = "id,L1,a1,b1,L2,a2,b2\n";
  for (let i = 0; i < rows; i++) {
    const lab = [20 + 60 * random(), -60 + 120 * random(), -60 + 120 * random()];
    const other = lab.map((value) => value + 2 * random() - 1);
    text += `s${i},${[...lab, ...other].map((value) => value.toFixed(2)).join(",")}\n`;
    if (text.length > 1 << 20) {
      writeSync(file, text);
      text = "";
    }
  }
  writeSync(file, text);
  closeSync(file);
}

for (const rows of counts) {
  const path = join(folder, `${rows}.csv`);
  make(path, rows);
  for (const format of ["csv", "ndjson", "json"]) {
    const out = openSync("/dev/null", "w");
    const start = process.hrtime.bigint();
    const { stderr, status } = spawnSync(
      process.execPath,
      ["--import", tell, bundle, "compare", "--pairs", path, "--format", format],
      { stdio: ["ignore", out, "pipe"], encoding: "utf8" },
    );
    const seconds = Number(process.hrtime.bigint() - start) / 1e9;
    closeSync(out);
    if (status !== 0) throw new Error(stderr);
    const { maxRSS, userCPUTime } = JSON.parse(stderr);
    console.log(
      `${String(rows).padStart(8)} rows ${format.padEnd(6)} ${seconds.toFixed(1).padStart(5)} s (${(userCPUTime / 1e6).toFixed(1)} s of user time), peak ${(maxRSS / 1024).toFixed(0)} MiB`,
    );
  }
}
rmSync(folder, { recursive: true });
