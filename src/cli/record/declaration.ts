import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";
import { cellOptions } from "./cells.js";

/** `record` as help and completion know it. */
export const record: CommandDeclaration = {
  name: "record",
  group: "With a bath log",
  arguments: "<LOG>",
  summary: "append one event to the bath log",
  details:
    "The log is a CSV file, one event a row, that a spreadsheet can edit too; it is begun where there is none. made-up " +
    "needs --dye; load needs --part, --parts, and --seconds or --shade; top-up needs --concentrate or --water; measured " +
    "needs --celsius, --volume, or what was found out about the bath's last load when it was dry: --lab, --good, " +
    "--rejected. A measured part of --seconds 0 is a bare one and needs --lab and --powder-lot.\n\n" +
    "--from SPEC --load N records the planned load N as done now; options beside it say what was different. --event " +
    "top-up takes the top-up after that load, --event made-up or dump that of the bath. --from SPEC alone writes all " +
    "rows of the plan without a time: fill in the time of each that is done, in a spreadsheet; until then it does not " +
    "count. What only a thermometer, a ruler or an eye can tell is left empty.\n\n" +
    "The row is on the disk when the command ends. Several may record at once. What a crash left of a row is moved to " +
    "LOG.torn, and said. Order of columns, delimiter and decimal mark stay those of the log; --delimiter, --decimal " +
    "and --bom shape a new one.",
  options: [
    ...cellOptions,
    { flags: "--from <spec>", description: "batch file whose plan has the rows" },
    {
      flags: "--load <number>",
      description: "of the plan, as the run sheet counts the loads of a bath; 0: before the first",
    },
  ],
  examples: [
    "dipwright record baths.csv --bath six --event made-up --dye coral --volume 6L",
    "dipwright record baths.csv --bath six --event load --part hook --shade coral-light --parts 24 --seconds 31 --celsius 79.5",
    "dipwright record baths.csv --bath six --event top-up --concentrate 60mL --water 140mL",
    "dipwright record baths.csv --bath six --event measured --time 09:31 --lab 73.1,33.4,16.0 --good 24",
    "dipwright record baths.csv --from batch.yaml --load 3 --celsius 79.5",
    "dipwright record baths.csv --from batch.yaml",
  ],
  formats: formatsOf(),
  writesCsv: true,
  load: async () => (await import("./execute.js")).execute,
};
