// Recipes of ten dyes: all 175 sets of one to three, cold (first of the process) and warm (median), in milliseconds of
// processor, beside the floor: as many evaluations of a colour as one set of three dyes needs at the least, for every set.
// Exit status 1 where the warm time is 2 s or more. Use: node test/bench/recipes.mjs [ROUNDS]
import { build } from "esbuild";

const rounds = Number(process.argv[2] ?? 9);
const bundled = await build({
  stdin: {
    contents: `export { someDyes } from "./test/core/recipe/some-dyes.js";
export { findRecipes, setsOf } from "./src/core/recipe/solve/find-recipes.js";
export { ranked } from "./src/core/recipe/solve/rank.js";
export { mixtureOf, mixedLab } from "./src/core/recipe/mixture/mixture.js";`,
    resolveDir: new URL("../../", import.meta.url).pathname,
  },
  bundle: true,
  format: "esm",
  platform: "node",
  write: false,
});
const code = Buffer.from(bundled.outputFiles[0].contents).toString("base64");
const core = await import(`data:text/javascript;base64,${code}`);

const dyes = [...core.someDyes(81, 5), ...core.someDyes(82, 5)].map((dye, i) => ({
  ...dye,
  name: `dye ${i}`,
}));
const targets = [
  [45, 20, 15],
  [60, -20, 5],
  [35, 5, -20],
  [75, 3, 30],
];
const spent = (work) => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
const recipes = (i) => {
  const wish = { target: targets[i % targets.length], seconds: 60, coldMl: () => 5840 };
  return core.ranked(core.findRecipes(dyes, wish), () => undefined, 8);
};
/** Eight starts of ten steps of four evaluations for each of the 175 sets. */
const evaluations = 8 * 10 * 4 * 175;
const mixture = core.mixtureOf(dyes.slice(0, 3), 60);
const floor = () => {
  let sum = 0;
  for (let i = 0; i < evaluations; i++) sum += core.mixedLab(mixture, [0.1, 0.2, 1e-6 * i])[0];
  return sum;
};

const cold = spent(() => recipes(0));
const [warm, floors] = [[], []];
for (let i = 0; i < rounds; i++) {
  warm.push(spent(() => recipes(i)));
  floors.push(spent(floor));
}
const sets = [1, 2, 3].reduce((sum, count) => sum + [...core.setsOf(dyes, count)].length, 0);
console.log(`${sets} sets of ten dyes, processor time`);
console.log(`  cold ${cold.toFixed(0)} ms, warm ${median(warm).toFixed(0)} ms (of ${rounds})`);
console.log(`  floor: ${evaluations} colours of three dyes ${median(floors).toFixed(0)} ms`);
process.exitCode = median(warm) < 2000 ? 0 : 1;
