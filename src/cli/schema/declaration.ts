import type { CommandDeclaration } from "../command.js";

/** `schema` as help and completion know it. */
export const schema: CommandDeclaration = {
  name: "schema",
  group: "Without a batch file",
  arguments: "",
  summary: "JSON Schema of the batch file, for editors",
  details:
    "Save it beside your batches and let the first line of each be: # yaml-language-server: $schema=./batch.schema.json",
  options: [],
  examples: ["dipwright schema --out batch.schema.json"],
  formats: ["text", "json"],
  load: async () => (await import("./execute.js")).execute,
};
