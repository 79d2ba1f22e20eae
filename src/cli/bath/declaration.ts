import { formatsOf } from "../../report/format/formats.js";
import { logOption } from "../batch/log-option.js";
import type { CommandDeclaration } from "../command.js";

/** `bath` as help and completion know it. */
export const bath: CommandDeclaration = {
  name: "bath",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "how each bath wears: its life, top-ups, where dye and heat go",
  details:
    "A life repeats this batch's work on a fresh bath under each top-up rule. CSV and TSV have one row a bath and rule; JSON has everything, unrounded.",
  options: [logOption],
  examples: [
    "dipwright bath batch.yaml",
    "dipwright bath batch.yaml --set tanks.six.cover=balls",
    "dipwright bath batch.yaml --format svg --out wear.svg",
  ],
  formats: formatsOf("picture"),
  load: async () => (await import("./execute.js")).execute,
};
