import { error } from "../../core/fault.js";
import { checkRow } from "../../log/row/check-row.js";
import type { LogValues } from "../../log/row/log-values.js";
import { type Execute, refused } from "../command.js";
import { usage } from "../usage.js";
import { appendRows } from "./append-rows.js";
import { localNow, readCells } from "./read-cells.js";
import { ofOption } from "./row-faults.js";

/** The name under which commander keeps an option. */
const camelCase = (name: string): string =>
  name.replace(/-(\w)/g, (_dash, letter: string) => letter.toUpperCase());

/** Appends one event to the bath log. */
export const execute: Execute = async (request, io) => {
  const path = request.args[0] ?? "";
  if (path === "" || path === "-")
    return refused(error("usage", ["LOG"], "a log is a file", "write dipwright record baths.csv"));
  if (request.output.set.length > 0)
    return refused(usage("--set", "no batch file is read, so there is nothing to set"));
  const now = io.now();
  const cells = readCells((name) => request.options[camelCase(name)] as string | undefined, now);
  const values: LogValues = { time: localNow(now), ...cells.values };
  const checked = checkRow(values);
  // A cell that could not be read is not missing.
  if (cells.faults.length > 0)
    return refused(
      ...cells.faults,
      ...checked.faults.filter(({ code }) => code !== "log-needs").map(ofOption),
    );
  // In a log that is read such a cell is a warning; here it is a slip that can be mended at once.
  if (!checked.ok || checked.faults.length > 0)
    return refused(...checked.faults.map((fault) => ({ ...ofOption(fault), severity: "error" as const })));
  return appendRows(path, [{ values, row: checked.value }], request, io);
};
