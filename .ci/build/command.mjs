import { rolldown } from "rolldown";
import { isLater, laterJsonSchema } from "./later-json-schema.mjs";
import { dist, root } from "./places.mjs";
import { withoutLocales } from "./without-locales.mjs";

const entry = "src/cli/main.ts";

/** A plugin that hears what each module imports other than by import(), and groups of modules made from that. */
function groupsByImports() {
  const imports = new Map();
  const reachedFrom = (id, reached = new Set()) => {
    if (reached.has(id)) return reached;
    reached.add(id);
    for (const next of imports.get(id) ?? []) reachedFrom(next, reached);
    return reached;
  };
  const plugin = {
    name: "hear-imports",
    moduleParsed: ({ id, importedIds }) => void imports.set(id, importedIds),
  };
  /**
   * A chunk of a module and all that it imports, but for what the entry needs too: the entry then does without the
   * chunk. Modules are asked for when all have been parsed.
   */
  const group = (name, start, priority) => {
    let reached;
    const test = (id) => {
      reached ??= [start, entry].map((file) => reachedFrom(root + file));
      return reached[0].has(id) && !reached[1].has(id) && !isLater(id);
    };
    return { name, priority, test, includeDependenciesRecursively: false };
  };
  return { plugin, group };
}

/**
 * Bundles the command, minified. All that every call needs is one file, all that `plan` needs besides is a second one;
 * what they load with import() is split off. Returns the modules that are in it.
 */
export async function buildCommand() {
  const { plugin, group } = groupsByImports();
  const bundle = await rolldown({
    cwd: root,
    input: { dipwright: entry, "parts/cost-thread": "src/cli/cost/thread.ts" },
    platform: "node",
    resolve: { conditionNames: ["import", "default"] },
    transform: { target: "node20.19" },
    treeshake: { propertyReadSideEffects: false },
    preserveEntrySignatures: "allow-extension",
    plugins: [withoutLocales, laterJsonSchema, plugin],
  });
  const { output } = await bundle.write({
    dir: dist,
    minify: true,
    comments: false,
    chunkFileNames: "parts/[name]-[hash].js",
    codeSplitting: {
      groups: [
        group("command-line", "src/cli/run-process.ts", 2),
        group("batch", "src/cli/plan/execute.ts", 1),
      ],
    },
  });
  await bundle.close();
  return output.flatMap(({ moduleIds }) => moduleIds);
}
