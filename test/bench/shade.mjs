// One shade curve of four swatches, its law chosen, the time for a target and its doubt, in a warm process;
// beside it the floor: the smooth reflectances of base, swatches and target alone.
// Use: node test/bench/shade.mjs; exit status 1 at 20 ms or more.
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));
const { outputFiles } = await build({
  stdin: {
    contents: `
      export { describeShade } from "./src/core/uptake/shade/describe-shade.ts";
      export { smoothReflectance } from "./src/core/colour/spectrum/smooth-reflectance.ts";
    `,
    resolveDir: root,
    loader: "ts",
  },
  bundle: true,
  platform: "node",
  format: "esm",
  write: false,
});
const { describeShade, smoothReflectance } = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`
);

const reading = { illuminant: "D65", observer: 10 };
const white = { name: "white", lab: [93.0, -0.3, 0.6] };
const labs = [
  [15, [63.6, 29.4, 8.1]],
  [30, [56.2, 34.0, 10.1]],
  [60, [49.2, 36.9, 12.2]],
  [180, [41.8, 38.7, 13.9]],
];
const target = [46.2, 37.9, 13.0];
const handling = { shortestSeconds: 15, longestSeconds: 300, timingSeconds: 2 };
/** The same dye read again and again, each time a little otherwise, so that nothing can be remembered. */
const dyeRead = (turn) => ({
  name: "brick",
  dilution: { kind: "liquid", fraction: 0.1 },
  celsius: 80,
  base: white,
  reading,
  swatches: labs.map(([seconds, [L, a, b]]) => ({
    seconds,
    colour: { kind: "lab", lab: [L + turn * 1e-4, a, b] },
  })),
  law: "auto",
  activationEnergyJPerMol: 75_000,
  uptakePerDm2: 0.03,
  uptakeAssumed: true,
});
const wish = {
  name: "target",
  target: { kind: "colour", colour: { kind: "lab", lab: target } },
  tolerance: 1.5,
};
const rounds = 60;
const warm = 20;
const timed = (work) => {
  const times = [];
  for (let turn = 0; turn < warm + rounds; turn++) {
    const start = process.hrtime.bigint();
    work(turn);
    if (turn >= warm) times.push(Number(process.hrtime.bigint() - start) / 1e6);
  }
  return times.toSorted((a, b) => a - b);
};
const median = (sorted) => sorted[Math.floor(sorted.length / 2)];

const floor = timed((turn) => {
  for (const lab of [white.lab, target, ...labs.map(([, lab]) => lab)])
    smoothReflectance([lab[0] + turn * 1e-4, lab[1], lab[2]], reading);
});
const whole = timed((turn) => {
  const shade = describeShade(dyeRead(turn), handling, { strength: 1, celsius: 80 }, wish);
  if (!shade.ok || !(shade.value.target.seconds > 0)) throw new Error("no time was found");
});
console.log(`floor, six smooth reflectances: ${median(floor).toFixed(2)} ms (median of ${rounds})`);
console.log(
  `curve, law, target, doubt:      ${median(whole).toFixed(2)} ms, slowest ${whole.at(-1).toFixed(2)} ms; to stay under 20 ms`,
);
process.exitCode = median(whole) < 20 ? 0 : 1;
