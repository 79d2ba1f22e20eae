// 10,000 loads of a bath's life, cold (the first call of the process) and warm (median), under each top-up rule,
// beside a floor: the 10,000 logarithms and the twelve operations that a load cannot do without.
// Exit status 1 where a warm life takes 50 ms or more, or ends before its 10,000 loads. Use: node test/bench/bath-life.mjs [ROUNDS]
import { build } from "esbuild";

const rounds = Number(process.argv[2] ?? 200);
const bundled = await build({
  stdin: {
    contents: `export { bathLife } from "./src/core/bath/life/bath-life.js";
export { dipTimer } from "./src/core/uptake/law/dip-time.js";
export { freshSeconds } from "./src/core/uptake/law/uptake-model.js";`,
    resolveDir: new URL("../../", import.meta.url).pathname,
  },
  bundle: true,
  format: "esm",
  platform: "node",
  write: false,
});
const code = Buffer.from(bundled.outputFiles[0].contents).toString("base64");
const { bathLife, dipTimer, freshSeconds } = await import(`data:text/javascript;base64,${code}`);

const model = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 300,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75_000,
};
const setting = (rule) => ({
  dye: { uptakePerDm2: 1e-6, dilution: { kind: "liquid", fraction: 0.1 } },
  handling: {
    loadSeconds: 40,
    drainSeconds: 15,
    rinseSeconds: 30,
    unloadSeconds: 20,
    longestSeconds: 300,
    dragOutMlPerDm2: 1e-4,
    liquorRatioLPerKg: 0,
  },
  rule,
  model,
  timer: dipTimer(model, 80),
  fresh: { volumeL: 6, dye: 584 },
  // Nothing is refilled under "none": a bath that lasts 10,000 loads must hardly evaporate.
  evaporationLPerSecond: rule === "none" ? 1e-9 : 1e-4,
  coldPerHot: 0.9736,
});
const load = (depth, rest) => ({ depth, freshSeconds: freshSeconds(model, depth), ...rest });
const mix = [
  load(0.3, { areaDm2: 9.8, parts: 24, massG: 150 }),
  load(0.7, { areaDm2: 7.6, parts: 4, massG: 120 }),
];

const milliseconds = (work) => {
  const start = process.hrtime.bigint();
  const result = work();
  return { ms: Number(process.hrtime.bigint() - start) / 1e6, result };
};
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

function floor() {
  let [dye, volume, sum] = [584, 6, 0];
  for (let i = 0; i < 10_000; i++) {
    const before = dye / volume;
    const u = 1e-6 * (9.8 - 2.2 * (i & 1)) * 0.3;
    const during = (before + (dye - u) / volume) / 2;
    sum += -Math.log1p((-0.3 * 97.3) / during) / 0.012;
    dye -= u + dye * 1e-9;
    volume -= 1e-9 * sum;
    if (volume < 5.9) volume = 6;
  }
  return sum;
}

const rules = ["none", "level", "strength"];
const works = {
  floor,
  ...Object.fromEntries(
    rules.map((rule) => {
      const one = setting(rule);
      return [rule, () => bathLife(one, mix, {}).loads];
    }),
  ),
};
const cold = Object.fromEntries(Object.entries(works).map(([name, work]) => [name, milliseconds(work)]));
const times = Object.fromEntries(Object.keys(works).map((name) => [name, []]));
for (let round = 0; round < rounds; round++)
  for (const [name, work] of Object.entries(works)) times[name].push(milliseconds(work).ms);
for (const [name, { ms, result }] of Object.entries(cold))
  console.log(
    `${name.padEnd(10)} cold ${ms.toFixed(2).padStart(7)} ms   warm ${median(times[name]).toFixed(2).padStart(7)} ms${name === "floor" ? "" : `   ${result} loads`}`,
  );
const short = rules.some((rule) => cold[rule].result < 10_000);
if (short || Object.values(times).some((values) => median(values) >= 50)) process.exitCode = 1;
