import type { CommandDeclaration } from "../command.js";

/** `new` as help and completion know it. */
export const newBatch: CommandDeclaration = {
  name: "new",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<DIR>",
  summary: "write a starter batch that plans as it is",
  details: "Makes the folder if need be; writes all files or none, and never over one that is there.",
  options: [],
  examples: ["dipwright new spring"],
  formats: ["text", "json"],
  load: async () => (await import("./execute.js")).execute,
};
