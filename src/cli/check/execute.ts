import { error } from "../../core/fault.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import { checkReport } from "../../report/check/report.js";
import { readBatchFile } from "../batch/read.js";
import { type Execute, refused } from "../command.js";

/** All faults of all files named: on stderr with text, in the report itself with any other format. */
export const execute: Execute = async (request, io) => {
  const names = request.args;
  if (names.filter((name) => name === "-").length > 1)
    return refused(error("usage", [], "stdin can be read once only", "write - once"));
  const files = [];
  for (const name of names) {
    const { diagnostics, batch } = await readBatchFile(name, request, io);
    files.push({ name, diagnostics, ...(batch === undefined ? {} : { batch }) });
  }
  const diagnostics = files.flatMap((file) => file.diagnostics);
  const asText = request.output.format === "text";
  const report = checkReport(files, asText);
  if (asText) return { diagnostics, report };
  const bad = hasErrors(diagnostics);
  return {
    diagnostics: [],
    report,
    ...(bad ? { status: 2 } : {}),
    missed: !bad && request.output.strict && diagnostics.length > 0,
  };
};
