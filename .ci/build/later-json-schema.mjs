import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

/**
 * Leaves zod's JSON Schema out of what every call loads: its schemas call it by way of an object that the module fills
 * when it is loaded, with the command that makes a JSON Schema. 19 kB of 415 kB.
 */
const core = join(dirname(createRequire(import.meta.url).resolve("zod")), "v4/core");
const names = new Map(
  ["json-schema-processors", "to-json-schema"].map((module) => {
    const text = readFileSync(join(core, `${module}.js`), "utf8");
    return [module, [...text.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name)];
  }),
);
const later = "\0json-schema-later";
const moduleOf = (id) => /\/zod\/v4\/core\/([\w-]+)\.js$/.exec(id)?.[1];

/** Methods that zod makes with every schema and that are called, if at all, later. */
const makesMethod = (name) => name.startsWith("create");

/** Whether a module is one of zod's that make a JSON Schema. */
export const isLater = (id) => names.has(moduleOf(id));

export const laterJsonSchema = {
  name: "later-json-schema",
  resolveId: (id, importer = "") => {
    const module = /\/([\w-]+)\.js$/.exec(id)?.[1];
    if (id.startsWith(later)) return id;
    return /\/zod\/v4\/classic\/schemas\.js$/.test(importer) && names.has(module)
      ? `${later}:${module}`
      : null;
  },
  load: (id) => {
    if (id === later) return "export const later = {};";
    const known = id.startsWith(later) ? names.get(id.slice(later.length + 1)) : undefined;
    if (known === undefined) return null;
    const calls = known.map((name) =>
      makesMethod(name)
        ? `export const ${name} = (...from) => (params) => later.${name}(...from)(params);`
        : `export const ${name} = (...from) => later.${name}(...from);`,
    );
    return [`import { later } from ${JSON.stringify(later)};`, ...calls].join("\n");
  },
  transform: (code, id) => {
    const known = names.get(moduleOf(id));
    return known === undefined
      ? null
      : `import { later } from ${JSON.stringify(later)};\n${code}\nObject.assign(later, { ${known.join(", ")} });\n`;
  },
};
