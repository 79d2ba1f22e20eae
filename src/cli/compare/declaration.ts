import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `compare` as help and completion know it. */
export const compare: CommandDeclaration = {
  name: "compare",
  group: "Without a batch file",
  arguments: "[COLOUR...]",
  summary: "colour differences of two colours, of a part and its shade, or of a file of pairs",
  details:
    "The first colour is the standard, the second the sample: L,a,b, #rrggbb, a CSS name, hsl(h, s%, l%), or with " +
    "--spec a shade. More colours are further readings of the sample: their mean is compared, and how uneven they are " +
    "is said. What was read under something else than --reading is carried over, and the report says so.\n\n" +
    "A shade is the standard wherever it comes, and its tolerance decides: pass, or fail and exit status 1. A part " +
    "that is too light gets the time of a second dip, in a fresh bath or one of --strength and --temperature.\n\n" +
    "--pairs reads a CSV file with a header row naming L1, a1, b1, L2, a2, b2; other columns are kept. Columns " +
    "separated by comma, semicolon or tab, with decimal point or comma, as the header and the first number show; " +
    "--delimiter and --decimal shape what is written. A row that cannot be read is reported with its row and column, " +
    "the others are written, and the exit status is 2. Formats for files of any length: csv, tsv, ndjson, json; " +
    "text and markdown hold all rows at once.",
  options: [
    { flags: "--pairs <file>", description: "compare every row of a file; - for stdin" },
    {
      flags: "--reading <reading>",
      description: "what L,a,b were read under: default D65/10, or D65/2 where both colours are a screen's",
    },
    {
      flags: "--tolerance <number>",
      description: "largest difference that passes; exit status 1 where one is larger",
    },
    {
      flags: "--formula <name>",
      description: "of the tolerance; default ciede2000",
      choices: ["cie76", "cie94", "cie94Textile", "cmc11", "cmc21", "ciede2000", "ciede2000Textile"],
    },
    { flags: "--spec <file>", description: "batch whose shades the colours may name" },
    { flags: "--strength <percent>", description: "of the bath for a second dip; default 100 %" },
    { flags: "--temperature <temperature>", description: "of the bath for a second dip; default the dye's" },
    { flags: "--fail-fast", description: "end at the first row that cannot be read" },
  ],
  examples: [
    'dipwright compare 65.9,44.6,23.0 "#d9603b"',
    "dipwright compare 50,-3,2 50.4,-2.8,2.5 --tolerance 1.0 --formula cmc21",
    "dipwright compare coral-light 66.1,44,22.7 --spec batch.yaml",
    "dipwright compare 66.1,44,23 66.4,43,23 coral-light --spec batch.yaml --strength 85%",
    "dipwright compare --pairs readings.csv --format csv --out compared.csv",
  ],
  formats: formatsOf("lines"),
  load: async () => (await import("./execute.js")).execute,
};
