import { defaults } from "../../core/model/defaults.js";
import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `shade` as help and completion know it. */
export const shade: CommandDeclaration = {
  name: "shade",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "a dye's shade curve, and the time for a colour",
  details:
    "Times are for the bath as it is: --strength and --temperature. The spec needs no orders. With a target, CSV has its one row, else one row a time; JSON has both.",
  options: [
    { flags: "--dye <name>", description: "dye of the spec; needed where it has several" },
    {
      flags: "--target <colour>",
      description: "L,a,b read as the swatches were, #rrggbb, or a shade of the spec",
    },
    {
      flags: "--tolerance <dE>",
      description: `CIEDE2000 that still passes: default the shade's, else ${defaults.shade.tolerance}`,
    },
    { flags: "--strength <share>", description: "of the bath, a fresh one has 100%: default 100%" },
    { flags: "--temperature <temp>", description: "of the bath: default the dye's own" },
    { flags: "--base <name>", description: "base of the spec that is dipped: default the swatches'" },
    {
      flags: "--grid",
      description: "a card of dip times for the target over temperature and strength, to hang up",
    },
    {
      flags: "--trial <dip>",
      description: "one dip in this bath, time and colour read: '45 s, 69.0,39.8,20.1'; corrects all times",
    },
  ],
  examples: [
    "dipwright shade batch.yaml --dye brick",
    "dipwright shade batch.yaml --target brick-deep --grid --format markdown",
    "dipwright shade batch.yaml --target brick-deep --strength 80% --trial '45 s, 52,30,11'",
    "dipwright shade batch.yaml --dye brick --target 49,37,12 --strength 80%",
    "dipwright shade batch.yaml --target brick-deep --temperature 75C",
  ],
  formats: formatsOf("picture"),
  load: async () => (await import("./execute.js")).execute,
};
