import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `review` as help and completion know it. */
export const review: CommandDeclaration = {
  name: "review",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "what the bath log teaches: drift, times, uptake, lots, and what to change",
  details:
    "Estimates come with standard errors; what the log cannot tell stays assumed. The YAML it prints goes into the batch file. CSV has one row a load that was read. --part and --lot list the loads of a part, or of a lot of powder or dye, with their baths and lots.",
  options: [
    { flags: "--log <file>", description: "bath log; default the log that the file names" },
    { flags: "--part <name>", description: "list the loads of a part" },
    { flags: "--lot <name>", description: "list the loads of a lot of powder or dye" },
  ],
  examples: [
    "dipwright review batch.yaml --log baths.csv",
    "dipwright review batch.yaml --log baths.csv --format svg --out drift.svg",
    "dipwright review batch.yaml --log baths.csv --lot P-17",
  ],
  formats: formatsOf("picture"),
  load: async () => (await import("./execute.js")).execute,
};
