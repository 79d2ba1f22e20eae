import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `rework` as help and completion know it. */
export const rework: CommandDeclaration = {
  name: "rework",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "which shades an off-shade part can still become",
  details:
    "With its own dye a part goes on for the time that is missing; another dye takes it as its base, which is an estimate. Times are for a fresh bath. Given a base of the spec as --from, it says which shades that base can serve.",
  options: [
    {
      flags: "--from <colour>",
      description: "of the part: L,a,b, #rrggbb, a shade or a base of the spec",
    },
    {
      flags: "--shade <name>",
      description: "shade that was meant, which tells the part's dye: default found by colour",
    },
  ],
  examples: [
    "dipwright rework batch.yaml --from 58,30,9 \\\n    --shade brick-deep",
    "dipwright rework batch.yaml --from 58,30,9",
    "dipwright rework batch.yaml --from grey",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
