import { formatsOf } from "../../report/format/formats.js";
import { spreadOptions } from "../batch/spread-options.js";
import type { CommandDeclaration } from "../command.js";

/** `cost` as help and completion know it. */
export const cost: CommandDeclaration = {
  name: "cost",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC...>",
  summary: "what each good part costs, one row an order",
  details:
    "SPEC is a file, a folder, a pattern in quotes, or -. A bad file is reported and the others go on; the exit status is then 2. In folders and patterns, files that hold no batch of their own are left out.",
  options: [
    ...spreadOptions,
    { flags: "--against <file>", description: "what changed since an earlier cost report in JSON" },
    { flags: "--since <date>", description: "only batches of this day or later" },
    { flags: "--until <date>", description: "only batches of this day or earlier" },
    { flags: "--columns <a,b,c>", description: "only these columns, in this order" },
    { flags: "--fail-fast", description: "stop at the first bad file" },
  ],
  examples: [
    "dipwright cost batch.yaml",
    "dipwright cost batches --format csv --out costs.csv",
    "dipwright cost 'batches/2027-*.yaml' --since 2027-04-01 --format ndjson",
    "dipwright cost batches --against last.json",
  ],
  formats: formatsOf("lines"),
  load: async () => (await import("./execute.js")).execute,
};
