import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `swatches` as help and completion know it. */
export const swatches: CommandDeclaration = {
  name: "swatches",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "which swatches of a dye to dip, and what was read of them",
  details:
    "Before any swatch: a ladder of times with the bare base and a repeat. Later: the one dip, in a fresh or a " +
    "weakened bath, that makes the times of the dye's shades surest, or that none helps much. --format csv is a " +
    "blank table to fill in; --from reads it back (comma or semicolon, decimal point or comma) and gives the lines " +
    "to paste into the batch file.",
  options: [
    { flags: "--dye <name>", description: "dye of the spec; needed where it has several" },
    {
      flags: "--target <colour>",
      description: "the colour that matters: L,a,b, #rrggbb or a shade; default all shades of the dye",
    },
    {
      flags: "--from <file>",
      description: "readings: time_s, L, a, b, and strength_pct, bath_C; - for stdin",
    },
  ],
  examples: [
    "dipwright swatches batch.yaml --dye brick",
    "dipwright swatches batch.yaml --dye brick --format csv --out readings.csv",
    "dipwright swatches batch.yaml --dye brick --from readings.csv",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
