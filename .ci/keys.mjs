// Writes the table of keys into the README, from the schema. `--print` prints it instead.
import { readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

const root = new URL("../", import.meta.url);
const { outputFiles } = await build({
  absWorkingDir: root.pathname,
  entryPoints: ["src/batch-file/json-schema/key-table.ts"],
  bundle: true,
  platform: "node",
  format: "esm",
  write: false,
});
const { keyTableMarkdown } = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`
);
const file = new URL("README.md", root);
const [head, , tail] = readFileSync(file, "utf8").split(
  /(?<=<!-- keys:.*-->\n)[\s\S]*?(?=<!-- \/keys -->)()/,
);
writeFileSync(file, `${head}${keyTableMarkdown()}\n${tail}`);
