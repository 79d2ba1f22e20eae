import { join } from "node:path";
import { error } from "../../core/fault.js";
import type { Report } from "../../report/report.js";
import { rowTable } from "../../report/row-table.js";
import { type Execute, refused, unplaced } from "../command.js";
import { schemaText } from "../schema/execute.js";
import { starter } from "./starter.js";

const report = (folder: string, names: readonly string[]): Report => {
  const paths = names.map((name) => join(folder, name));
  return {
    name: "new",
    data: { folder, files: paths },
    rows: rowTable(paths.map((path, i) => [{ key: `file_${i + 1}`, title: "file" }, path])),
    blocks: [
      { kind: "paragraph", text: `Wrote ${paths.join(" and ")}.` },
      { kind: "paragraph", text: `Next: dipwright plan ${paths[0]}` },
    ],
  };
};

/** Writes the starter batch into a folder. */
export const execute: Execute = async ({ args, output }, io) => {
  const folder = args[0] ?? "";
  if (folder === "" || folder === "-")
    return refused(error("usage", ["DIR"], "no folder is given", "write dipwright new spring"));
  if (output.set.length > 0)
    return refused(error("usage", ["--set"], "new reads no batch file, so there is nothing to set"));
  const files = new Map([
    ["batch.yaml", starter],
    ["batch.schema.json", schemaText()],
  ]);
  const faults = await io.createFiles(folder, files);
  return faults.length > 0
    ? { diagnostics: faults.map(unplaced) }
    : { diagnostics: [], report: report(folder, [...files.keys()]) };
};
