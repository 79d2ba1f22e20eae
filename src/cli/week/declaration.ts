import { formatsOf } from "../../report/format/formats.js";
import { logOption } from "../batch/log-option.js";
import type { CommandDeclaration } from "../command.js";
import { usualDays, usualHours } from "./usual.js";

/** `week` as help and completion know it. */
export const week: CommandDeclaration = {
  name: "week",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC...>",
  summary: "put orders of several batches onto days: what is ready when, what to order",
  details:
    "Takes files, folders and patterns. Orders are taken by their due: dates, light before dark in a bath, with the fewest clean-ups; kept baths go on from day to day. A day takes the time that plan gives for it. Dyes and parts with a stock: and a leadTime: are ordered in time. The exit status is 1 where an order is late.",
  options: [
    { flags: "--from <day>", description: "first day: default the earliest date: of the files" },
    { flags: "--people <n>", description: "1 or 2 people at work; default 1" },
    { flags: "--days <list>", description: `working days: default ${usualDays}; mon,wed,fri is read too` },
    {
      flags: "--hours-a-day <time>",
      description: `from the start of a day's work to its end: default ${usualHours} h, assumed`,
    },
    {
      flags: "--rows <what>",
      description: "of csv and tsv: orders by day (default), baths by day, or stock",
      choices: ["orders", "baths", "stock"],
    },
    logOption,
    { flags: "--sheet <day>", description: "the run sheet of one day instead, as plan prints it" },
  ],
  examples: [
    "dipwright week monday.yaml tuesday.yaml --from 2027-04-12",
    "dipwright week orders --from 2027-04-12 --people 2",
    "dipwright week batch.yaml --from 2027-04-12 --days mon,wed \\\n    --hours-a-day 6h --format csv --out week.csv",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
