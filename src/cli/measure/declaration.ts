import { defaults } from "../../core/model/defaults.js";
import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `measure` as help and completion know it. */
export const measure: CommandDeclaration = {
  name: "measure",
  group: "Without a batch file",
  arguments: "<FILE...>",
  summary: "area, volume, mass and box of parts from STL or 3MF files",
  details:
    "One row a file; - reads one from stdin. What is wrong with a surface is reported, and whether its volume can " +
    "be trusted. A file that cannot be read is reported too, the others are measured, and the exit status is 2.\n\n" +
    "With --spec also the parts a load in a tank, and the liquor that one part carries out.",
  options: [
    {
      flags: "--unit <name>",
      description: `unit of an STL: mm, cm, m, micron, inch, foot; default ${defaults.part.meshUnit}`,
    },
    {
      flags: "--density <density>",
      description: `of the material; default ${defaults.part.densityGPerCm3} g/cm3, sintered nylon`,
    },
    { flags: "--spec <file>", description: "batch that has the tank, and the handling" },
    { flags: "--tank <name>", description: "tank of the spec; needed where it has several" },
  ],
  examples: [
    "dipwright measure models/hook.stl models/tray.3mf",
    "dipwright measure hook.stl --unit inch --density 1.01g/cm3",
    "dipwright measure hook.stl --spec batch.yaml --tank six --format csv",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
