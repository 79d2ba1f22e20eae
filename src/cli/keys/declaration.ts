import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `keys` as help and completion know it. */
export const keys: CommandDeclaration = {
  name: "keys",
  group: "Without a batch file",
  arguments: "[WORD]",
  summary: "the keys of the batch file: what each means, its default, an example",
  details:
    "With WORD only the keys whose name has it; where none has, those whose meaning has it. A path such as tanks.six finds the keys below it.",
  options: [],
  examples: ["dipwright keys", "dipwright keys swatches", "dipwright keys --format markdown --out KEYS.md"],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
