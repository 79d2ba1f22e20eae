// CIEDE2000 over a million pairs beside culori, colorjs.io, color-diff and delta-e, all in one run, their turns
// interleaved. Ours reads the million pairs from one array; the others get ready-made objects of their own kind
// (a pool of 20,000 pairs, gone through 50 times, so that their memory does not slow them).
// Floor: 4 million pairs a second and 1.5 times the fastest of the others; exit status 1 below it.
// Use: node test/bench/ciede2000.bench.mjs
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { diff } from "color-diff";
import Color from "colorjs.io";
import { differenceCiede2000 } from "culori";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));
const bundle = await build({
  absWorkingDir: root,
  entryPoints: ["src/core/colour/difference/ciede2000.ts"],
  bundle: true,
  format: "esm",
  write: false,
});
const { ciede2000Pairs } = await import(
  `data:text/javascript;base64,${Buffer.from(bundle.outputFiles[0].contents).toString("base64")}`
);
const DeltaE = createRequire(import.meta.url)("delta-e");

const count = 1_000_000;
const pool = 20_000;
let seed = 20270416;
const random = () => {
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return seed / 2 ** 32;
};
const pairs = Float64Array.from({ length: 6 * count }, (_, i) =>
  i % 3 === 0 ? 100 * random() : 200 * random() - 100,
);
const out = new Float64Array(count);
const colours = (make) =>
  Array.from({ length: 2 * pool }, (_, i) => make(pairs[3 * i], pairs[3 * i + 1], pairs[3 * i + 2]));
const over = (objects, difference) => () => {
  let sum = 0;
  for (let n = 0; n < count; n++) {
    const i = 2 * (n % pool);
    sum += difference(objects[i], objects[i + 1]);
  }
  return sum / count;
};
const culoriDifference = differenceCiede2000();
const contestants = {
  dipwright: () => {
    ciede2000Pairs(pairs, out);
    let sum = 0;
    for (let n = 0; n < count; n++) sum += out[n % pool];
    return sum / count;
  },
  culori: over(
    colours((l, a, b) => ({ mode: "lab65", l, a, b })),
    culoriDifference,
  ),
  "colorjs.io": over(
    colours((l, a, b) => new Color("lab", [l, a, b])),
    (one, other) => one.deltaE2000(other),
  ),
  "color-diff": over(
    colours((L, a, b) => ({ L, a, b })),
    (one, other) => diff(one, other),
  ),
  "delta-e": over(
    colours((L, A, B) => ({ L, A, B })),
    (one, other) => DeltaE.getDeltaE00(one, other),
  ),
};

const best = {};
const mean = {};
for (let round = 0; round < 5; round++) {
  for (const [name, run] of Object.entries(contestants)) {
    const from = performance.now();
    mean[name] = run();
    const seconds = (performance.now() - from) / 1000;
    best[name] = Math.max(best[name] ?? 0, count / seconds / 1e6);
  }
}
for (const name of Object.keys(contestants))
  console.log(
    `${name.padEnd(12)} ${best[name].toFixed(2).padStart(7)} million pairs/s   mean ${mean[name].toFixed(9)}`,
  );
const fastest = Math.max(
  ...Object.entries(best).flatMap(([name, rate]) => (name === "dipwright" ? [] : rate)),
);
const ratio = best.dipwright / fastest;
const good = best.dipwright >= 4 && ratio >= 1.5;
console.log(
  `dipwright ${best.dipwright.toFixed(2)} million pairs/s (floor 4), ${ratio.toFixed(2)} times the fastest other (floor 1.5): ${good ? "holds" : "fails"}`,
);
process.exitCode = good ? 0 : 1;
