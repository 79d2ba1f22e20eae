// Bundles the command (minified, rarely used parts split off) and the library into dist.
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../", import.meta.url));
/** Zod carries its own words in some fifty languages; ours are in src/batch-file. */
const ownWords = {
  name: "own-words",
  setup(given) {
    given.onResolve({ filter: /\/locales\/index\.js$/ }, () => ({ path: "none", namespace: "none" }));
    given.onLoad({ filter: /.*/, namespace: "none" }, () => ({ contents: "export {};" }));
  },
};

const common = {
  absWorkingDir: root,
  bundle: true,
  platform: "node",
  target: "node20.19",
  format: "esm",
  logLevel: "warning",
  legalComments: "none",
  // write-file-atomic tells the writers of one process apart by the name of its own file.
  define: { __filename: "import.meta.url" },
  plugins: [ownWords],
};
// Bundled CommonJS packages call require() for the modules of Node itself.
const banner = {
  js: 'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);',
};

rmSync(new URL("../dist", import.meta.url), { recursive: true, force: true });
await build({
  ...common,
  entryPoints: { dipwright: "src/cli/main.ts", "cost-thread": "src/cli/cost/thread.ts" },
  outdir: "dist",
  splitting: true,
  minify: true,
  chunkNames: "parts/[name]-[hash]",
  banner,
});
await build({ ...common, entryPoints: { index: "src/index.ts" }, outdir: "dist", banner });
