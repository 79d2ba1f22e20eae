// Smoothest reflectance of 20,000 random colours inside the optimal-colour limits, D65/10: time of the first
// (tables and limits are built then) and mean of the others. Floor: 0.3 ms each; exit status 1 above it.
// Use: node test/bench/smooth-reflectance.bench.mjs
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const bundle = await build({
  absWorkingDir: fileURLToPath(new URL("../../", import.meta.url)),
  stdin: {
    contents: `export { smoothReflectance } from "./src/core/colour/spectrum/smooth-reflectance.js";`,
    resolveDir: fileURLToPath(new URL("../../", import.meta.url)),
  },
  bundle: true,
  format: "esm",
  write: false,
});
const { smoothReflectance } = await import(
  `data:text/javascript;base64,${Buffer.from(bundle.outputFiles[0].contents).toString("base64")}`
);
const reading = { illuminant: "D65", observer: 10 };
let seed = 20270416;
const random = () => {
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return seed / 2 ** 32;
};
const start = performance.now();
smoothReflectance([60, 40, 25], reading);
const first = performance.now() - start;
const colours = [];
while (colours.length < 20_000) {
  const lab = [100 * random(), 240 * random() - 120, 240 * random() - 120];
  if (smoothReflectance(lab, reading).ok) colours.push(lab);
}
const from = performance.now();
for (const lab of colours) smoothReflectance(lab, reading);
const each = (performance.now() - from) / colours.length;
console.log(
  `first ${first.toFixed(1)} ms, then ${each.toFixed(4)} ms each (floor 0.3): ${each <= 0.3 ? "holds" : "fails"}`,
);
process.exitCode = each <= 0.3 ? 0 : 1;
