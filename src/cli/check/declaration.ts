import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `check` as help and completion know it. */
export const check: CommandDeclaration = {
  name: "check",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC...>",
  summary: "read batch files and say all that is wrong with them",
  details: "With --format json the faults go to stdout, for editors and scripts.",
  options: [],
  examples: ["dipwright check batch.yaml", "dipwright check --format json - < batch.yaml"],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
