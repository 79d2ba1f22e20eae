import { rolldown } from "rolldown";
import { dist, root } from "./places.mjs";
import { withoutLocales } from "./without-locales.mjs";

/** csv-parse without node's Buffer. */
const forBrowsers = { "csv-parse/sync": "csv-parse/browser/esm/sync" };

/** `packages/zod/v4/core/parse` for a module of a package; npm would not pack a folder named node_modules. */
const placeOf = (id) =>
  `packages/${id
    .split("/node_modules/")
    .at(-1)
    .replace(/\.[cm]?js$/, "")}`;

/**
 * Writes the library as ES modules, a file for each module of ours and of the packages that they import, so that a
 * bundler takes what is used and no package is installed beside it. Returns the modules that are in it.
 */
export async function buildLibrary() {
  const bundle = await rolldown({
    cwd: root,
    input: "src/index.ts",
    platform: "browser",
    resolve: { conditionNames: ["import", "browser", "default"], alias: forBrowsers },
    transform: { target: "es2023" },
    plugins: [withoutLocales],
  });
  const { output } = await bundle.write({
    dir: `${dist}library`,
    preserveModules: true,
    preserveModulesRoot: `${root}src`,
    entryFileNames: ({ name, facadeModuleId: id }) =>
      `${id?.includes("/node_modules/") ? placeOf(id) : name}.js`,
  });
  await bundle.close();
  return output.flatMap(({ moduleIds }) => moduleIds);
}
