// A load with its temperature beside the load of `workOn`: 10,000 loads on one bath, cold (first of the process) and
// warm (median), in nanoseconds of processor a load. A load with temperature racks and waits, lid on; the parts cool the
// bath and are dipped by the integral of the rate; they drain, are rinsed and unloaded, lid off; cold top-ups go in.
// Exit status 1 where a warm load with temperature takes 5 µs or more. Use: node test/bench/heat.mjs [ROUNDS]
import { build } from "esbuild";

const rounds = Number(process.argv[2] ?? 40);
const LOADS = 10_000;
const files = [
  ...["bath-heat", "dip", "dye-pace", "heat-state", "hold", "rise-and-fall"].map(
    (name) => `heat/working/${name}`,
  ),
  "load/work-load",
];
const bundled = await build({
  stdin: {
    contents: `${files.map((file) => `export * from "./src/core/bath/${file}.js";`).join("")}
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
const core = await import(`data:text/javascript;base64,${code}`);
const { bathHeat, dip, dyePace, heatState, hold, immerseParts, liftParts, pourTopUp, riseTo } = core;

const model = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 300,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75_000,
};
const timer = core.dipTimer(model, 80);
const setting = {
  dye: { uptakePerDm2: 1e-6, dilution: { kind: "liquid", fraction: 0.1 } },
  handling: {
    loadSeconds: 40,
    drainSeconds: 15,
    rinseSeconds: 30,
    unloadSeconds: 20,
    longestSeconds: 300,
    dragOutMlPerDm2: 0.8,
    liquorRatioLPerKg: 0,
  },
  rule: "strength",
  timer,
  fresh: { volumeL: 6, dye: 584 },
  evaporationLPerSecond: 1e-4,
  coldPerHot: 0.9736,
};
const room = { celsius: 20, humidity: 0.5 };
const load = { areaDm2: 9.8, depth: 0.5, freshSeconds: core.freshSeconds(model, 0.5) };

function today() {
  const bath = core.bathToWork(setting.fresh);
  for (let i = 0; i < LOADS; i++) core.workOn(bath, setting, load);
  return bath.seconds;
}

function withHeat(heaterW) {
  const tank = {
    surfaceCm2: 450,
    wallAreaDm2: 18,
    insulation: "none",
    cover: "lid",
    heaterW,
    heaterEfficiency: 0.9,
    agitationW: 180,
  };
  const heat = bathHeat(tank, 80, room);
  const pace = dyePace(75_000, 80);
  return () => {
    const state = heatState(80, 6);
    let seconds = 0;
    for (let i = 0; i < LOADS; i++) {
      hold(heat, heat.covered, state, 85);
      riseTo(heat, state, 79);
      immerseParts(heat, state, { jPerK: 476, celsius: 20 });
      seconds = dip(heat, state, timer(load.freshSeconds, 1), pace);
      liftParts(state);
      state.volumeL -= 0.0078;
      hold(heat, heat.open, state, 90);
      if (state.volumeL < 5.88) pourTopUp(heat, state, { volumeL: 6 - state.volumeL, celsius: 20 });
    }
    return seconds;
  };
}

const works = {
  workOn: today,
  "temperature, heater unknown": withHeat(undefined),
  "temperature, 500 W": withHeat(500),
  "temperature, 900 W": withHeat(900),
  "temperature, 2000 W": withHeat(2000),
};
const nanoseconds = (work) => {
  const start = process.cpuUsage();
  const seconds = work();
  const { user, system } = process.cpuUsage(start);
  return { ns: (1000 * (user + system)) / LOADS, seconds };
};
const cold = Object.fromEntries(Object.entries(works).map(([name, work]) => [name, nanoseconds(work)]));
const times = Object.fromEntries(Object.keys(works).map((name) => [name, []]));
for (let round = 0; round < rounds; round++)
  for (const [name, work] of Object.entries(works)) times[name].push(nanoseconds(work).ns);
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
for (const [name, { ns, seconds }] of Object.entries(cold))
  console.log(
    `${name.padEnd(28)} cold ${ns.toFixed(0).padStart(6)} ns   warm ${median(times[name]).toFixed(0).padStart(6)} ns   last dip ${seconds.toFixed(2)} s`,
  );
if (Object.values(times).some((values) => median(values) >= 5000)) process.exitCode = 1;
