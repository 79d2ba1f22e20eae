// The study of what a bath log teaches: how near estimates come to the truth of invented workshops, and what it gains.
// Use: node test/bench/learning-study.mjs [WORKSHOPS]
import { build } from "esbuild";

const root = new URL("../../", import.meta.url);
const bundled = await build({
  stdin: {
    contents:
      'export { printedStudy } from "./test/log/review/print-study.js"; export { workshopBatch } from "./test/log/review/workshop.js";',
    resolveDir: root.pathname,
  },
  bundle: true,
  format: "esm",
  platform: "node",
  write: false,
  // Where the reader of examples thinks that it is.
  define: { "import.meta.url": JSON.stringify(new URL("test/batch-file/read.ts", root).href) },
  external: ["node:*"],
});
const code = Buffer.from(bundled.outputFiles[0].contents).toString("base64");
const { printedStudy, workshopBatch } = await import(`data:text/javascript;base64,${code}`);
console.log(printedStudy(await workshopBatch(), Number(process.argv[2] ?? 100)));
