// Processor time of 10,000 loads of a bath's life, cold (the first call of the process) and warm (median), under the two top-up rules that
// keep it full, for an endless heater and for three that are not, beside a floor: the 10,000 logarithms and the twelve
// operations that a load without temperature cannot do without.
// Exit status 1 where a warm life takes 100 ms or more, or ends before its 10,000 loads. Use: node test/bench/bath-life.mjs [ROUNDS]
import { build } from "esbuild";

const rounds = Number(process.argv[2] ?? 200);
const bundled = await build({
  stdin: {
    contents: `export { bathLife } from "./src/core/bath/life/bath-life.js";
export { bathHeat } from "./src/core/bath/heat/working/bath-heat.js";
export { cooledShare } from "./src/core/bath/heat/working/cooled-share.js";
export { dyePace } from "./src/core/bath/heat/working/dye-pace.js";
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
const { bathHeat, bathLife, cooledShare, dipTimer, dyePace, freshSeconds } = await import(
  `data:text/javascript;base64,${code}`
);

const model = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 300,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75_000,
};
const room = { celsius: 20, humidity: 0.5 };
const tank = {
  surfaceCm2: 450,
  wallAreaDm2: 18,
  insulation: "none",
  cover: "lid",
  heaterEfficiency: 0.9,
  agitationW: 180,
};
function setting(rule, heaterW) {
  const heat = bathHeat({ ...tank, ...(heaterW === undefined ? {} : { heaterW }) }, 80, room);
  return { ...shared, rule, heat, cooled: cooledShare(heat, 45) };
}
const shared = {
  dye: { uptakePerDm2: 0.03, dilution: { kind: "liquid", fraction: 0.1 } },
  handling: {
    loadSeconds: 15,
    loadPartSeconds: 2,
    drainSeconds: 15,
    rinseSeconds: 30,
    unloadSeconds: 10,
    unloadPartSeconds: 1,
    belowKelvin: 1,
    coolToCelsius: 45,
    longestSeconds: 600,
    // Unlike from load to load: a bath that comes back to where it was would not be worked on.
    dragOutMlPerDm2: 0.8 * Math.SQRT2,
    liquorRatioLPerKg: 20,
    freeboard: 0.05,
  },
  tank: { volumeL: 6, capacityL: 7.5 },
  timer: dipTimer(model, 80),
  pace: dyePace(75_000, 80),
  fresh: { volumeL: 6, dye: 584 },
  coldPerHot: 0.9736,
  partsCelsius: 20,
  topUpCelsius: 20,
};
const part = (massG, areaDm2) => ({ massG, areaDm2, volumeCm3: massG / 0.93, heatCapacityKjPerKgK: 1.7 });
const load = (depth, rest) => ({ depth, freshSeconds: freshSeconds(model, depth), ...rest });
const mix = [load(0.3, { part: part(6.4, 0.41), parts: 24 }), load(0.7, { part: part(31, 1.9), parts: 4 })];

const milliseconds = (work) => {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, result };
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

const rules = ["level", "strength"];
const works = {
  floor,
  ...Object.fromEntries(
    [undefined, 500, 900, 2000].flatMap((heaterW) =>
      rules.map((rule) => {
        const one = setting(rule, heaterW);
        return [
          `${rule}, ${heaterW === undefined ? "endless heater" : `${heaterW} W`}`,
          () => bathLife(one, mix, { tracePoints: 0 }),
        ];
      }),
    ),
  ),
};
const cold = Object.fromEntries(Object.entries(works).map(([name, work]) => [name, milliseconds(work)]));
const times = Object.fromEntries(Object.keys(works).map((name) => [name, []]));
for (let round = 0; round < rounds; round++)
  for (const [name, work] of Object.entries(works)) times[name].push(milliseconds(work).ms);
for (const [name, { ms, result }] of Object.entries(cold)) {
  const life = name === "floor" ? "" : `   ${result.loads} loads, ${result.endedBy}`;
  const warm = median(times[name]);
  console.log(
    `${name.padEnd(26)} cold ${ms.toFixed(2).padStart(7)} ms   warm ${warm.toFixed(2).padStart(7)} ms${life}`,
  );
  if (name !== "floor" && (warm >= 100 || result.loads < 10_000)) process.exitCode = 1;
}
