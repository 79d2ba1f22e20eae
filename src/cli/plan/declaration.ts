import { formatsOf } from "../../report/format/formats.js";
import { logOption } from "../batch/log-option.js";
import { spreadOptions } from "../batch/spread-options.js";
import type { CommandDeclaration } from "../command.js";

/** `plan` as help and completion know it. */
export const plan: CommandDeclaration = {
  name: "plan",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "the whole run sheet: mix, dip, top up, the clock, costs",
  details: "CSV and TSV have one row a load; JSON has everything, unrounded.",
  options: [logOption, ...spreadOptions],
  examples: [
    "dipwright plan batch.yaml",
    "dipwright plan batch.yaml --set handling.rinses=2 --format json",
    "dipwright plan - --format csv --out loads.csv < batch.yaml",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
