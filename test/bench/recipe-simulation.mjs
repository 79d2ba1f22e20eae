// The simulation of recipes at large: medians, 95th percentiles and how often the doubt holds, for 60 palettes of 8 colours,
// and for half as many in worlds that depart further from the model.
// Use: node test/bench/recipe-simulation.mjs [PALETTES] [SEED]
import { build } from "esbuild";

const [palettes, seed] = [Number(process.argv[2] ?? 60), Number(process.argv[3] ?? 1)];
const bundled = await build({
  stdin: {
    contents:
      'export * from "./test/core/recipe/recipe-simulation.js"; export * from "./test/core/recipe/competing-dyes.js";',
    resolveDir: new URL("../../", import.meta.url).pathname,
  },
  bundle: true,
  format: "esm",
  platform: "node",
  write: false,
});
const code = Buffer.from(bundled.outputFiles[0].contents).toString("base64");
const { harsherWorlds, palette, printedTries, simulateRecipes } = await import(
  `data:text/javascript;base64,${code}`
);
for (const by of ["colorimeter", "spectrophotometer"])
  console.log(
    printedTries(`${palettes} palettes, ${by}`, simulateRecipes({ palettes, targets: 8, seed, by })),
  );
for (const [name, world] of Object.entries(harsherWorlds))
  for (const by of ["colorimeter", "spectrophotometer"])
    console.log(
      printedTries(
        `${name}, ${by}`,
        simulateRecipes({
          palettes: palettes / 2,
          targets: 8,
          seed,
          by,
          make: (random) => palette(random, 4, world),
        }),
      ),
    );
