import { lawNames } from "../../core/uptake/law/laws.js";
import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `fit` as help and completion know it. */
export const fit: CommandDeclaration = {
  name: "fit",
  group: "Without a batch file",
  arguments: "<FILE>",
  summary: "uptake law, rate and half time from readings over time",
  details:
    "FILE is CSV (- for stdin) with a time column, its unit in the name (time_s, time_min, time_h, time_d), and one of readings: uptake, ks or exhaustion. Comma, semicolon or tab; decimal point or comma. Rates and times come back in the unit of the time column; --format svg draws the curve, html a page with it.",
  options: [
    { flags: "--law <name>", description: "this law, not the best one", choices: lawNames },
    { flags: "--column <name>", description: "the readings, where several columns have some" },
  ],
  examples: ["dipwright fit readings.csv", "dipwright fit readings.csv --format svg --out curve.svg"],
  formats: formatsOf("picture"),
  load: async () => (await import("./execute.js")).execute,
};
