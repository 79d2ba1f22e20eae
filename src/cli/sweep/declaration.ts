import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `sweep` as help and completion know it. */
export const sweep: CommandDeclaration = {
  name: "sweep",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "the plan's results while numbers and choices vary",
  details:
    "One row a combination. A combination that cannot be worked has the code of its error instead of results; where none can, the errors are printed and nothing is written. In CSV and TSV the values of a key that are quantities are numbers with the unit in the column's name, such as tanks.six.heater_W, and dilutions are in percent.",
  options: [
    {
      flags: "--vary <key.path=A,B,C>",
      description: "values of one key, as --set writes it, or A..B/N at even steps; may be repeated",
      repeat: true,
    },
    { flags: "--result <names>", description: "columns wanted, parted by commas: default all of them" },
  ],
  examples: [
    "dipwright sweep batch.yaml --vary tanks.six.cover=none,lid,balls",
    "dipwright sweep batch.yaml --vary dyes.brick.dilution=1:9,1:14,1:19 \\\n    --vary 'tanks.six.heater=400 W..1000 W/4' --result cost,minutes --format csv",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
