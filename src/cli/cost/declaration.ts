import type { CommandDeclaration } from "../command.js";
import { tableFormats } from "../format.js";

/** `cost` as help and completion know it. */
export const cost: CommandDeclaration = {
  name: "cost",
  group: "With a batch file",
  arguments: "<SPEC...>",
  summary: "what each good part costs, one row an order",
  details: "A bad file is reported and the others go on; the exit status is then 2.",
  options: [],
  examples: ["dipwright cost batch.yaml", "dipwright cost spring.yaml summer.yaml --format csv"],
  formats: tableFormats,
  load: async () => (await import("./execute.js")).execute,
};
