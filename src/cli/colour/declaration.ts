import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `colour` as help and completion know it. */
export const colour: CommandDeclaration = {
  name: "colour",
  group: "Without a batch file",
  arguments: "[A]",
  summary: "XYZ, CIELAB, hex, whiteness and more of a colour or of curves",
  details:
    "A is L,a,b, #rrggbb, a CSS name, hsl(h, s%, l%), or with --spec a shade. Reported under something else " +
    "than it was read under, it is carried over through its smoothest reflectance curve: an estimate.\n\n" +
    "--reflectance reads a CSV file with a column wavelength_nm, 400 to 700 nm or wider by 5 or 10 nm, and one " +
    "column a sample, 0 to 1; comma, semicolon or tab, decimal point or comma. A sample that cannot be read is " +
    "said with its row and column, the others are written, and the exit status is 2. --format ndjson gives one " +
    "JSON value a line for each sample.",
  options: [
    { flags: "--reflectance <file>", description: "report every curve of a file; - for stdin" },
    { flags: "--reading <reading>", description: "what L,a,b was read under; default D65/10" },
    {
      flags: "--illuminant <name>",
      description: "to report under: A, D50, D65, F2, F11 or LED-B3; default as read, D65 for curves",
    },
    {
      flags: "--observer <angle>",
      description: "to report under: 2 or 10; default as read, 10 for curves",
    },
    { flags: "--spec <file>", description: "batch whose shades A may name" },
  ],
  examples: [
    "dipwright colour 65.9,44.6,23.0",
    'dipwright colour "#d9603b" --illuminant A --observer 10',
    "dipwright colour --reflectance curves.csv --format csv",
  ],
  formats: formatsOf("lines"),
  load: async () => (await import("./execute.js")).execute,
};
