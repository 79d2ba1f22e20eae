import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `blend` as help and completion know it. */
export const blend: CommandDeclaration = {
  name: "blend",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "recipes of one to three dyes for a colour, and their correction by trials",
  details:
    "A first recipe misses by about 2 CIEDE2000, in one case of twenty by 5 to 7: mix a jar of half a litre, dip one part, read it, and give it as --trial. Amounts are measured cold. CSV has a row a dye of each recipe.",
  options: [
    {
      flags: "--target <colour>",
      description:
        "L,a,b read as the swatches were, #rrggbb, or a shade of the spec; one that a mix gives goes on from its trials",
    },
    { flags: "--dyes <names>", description: "dyes to mix, with commas: default every dye with swatches" },
    { flags: "--time <time>", description: "of the dip, one for all dyes: default 60s, or the last trial's" },
    { flags: "--tank <name>", description: "tank of the spec to fill: default the jar alone" },
    { flags: "--volume <volume>", description: "bath to fill, measured hot, instead of a tank" },
    { flags: "--base <name>", description: "base of the spec that is dipped: default the swatches'" },
    {
      flags: "--trial <recipe>",
      description:
        "what was mixed, and the colour it gave: 'yellow 12 mL, blue 3 mL, water 485 mL, 60 s: 61,-20,30'; may be given again, the last trial last; without a time it took that of --time",
      repeat: true,
    },
  ],
  examples: [
    "dipwright blend batch.yaml --target 55,-18,22",
    "dipwright blend batch.yaml --target moss \\\n    --dyes straw,lagoon --tank six",
    "dipwright blend batch.yaml --target moss --trial \\\n    'straw 12 mL, water 488 mL, 60 s: 80,2,55'",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
