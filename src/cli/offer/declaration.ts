import { defaults } from "../../core/model/defaults.js";
import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";
import { usualHoursPerWeek, usualQuantities } from "./usual.js";

/** `offer` as help and completion know it. */
export const offer: CommandDeclaration = {
  name: "offer",
  group: "With a batch file (SPEC; new writes one)",
  arguments: "<SPEC>",
  summary: "what to sell: colours, a price list, and when a colour pays",
  details:
    "Every part of the spec is priced in each of its shades on each base that its blank has a price for, and undyed, as a batch of its own: once with a kept bath, which the order pays for by its share of the bath's life, once with a fresh bath that the order pays for whole. A dye without shades is priced in the colours found for it. CSV has a row a part, colour, base and quantity.",
  options: [
    {
      flags: "--quantities <list>",
      description: `good parts in a batch: default ${usualQuantities.join(",")}`,
    },
    {
      flags: "--list-quantity <n>",
      description: "the quantity whose price is the list price: default the second",
    },
    {
      flags: "--sales <rate>",
      description: "good parts sold of each colour: 12/month, 3/week, 150/year; kept baths are shared by it",
    },
    {
      flags: "--hours <time>",
      description: `working hours of a week: default ${usualHoursPerWeek} h, assumed`,
    },
    { flags: "--jug <amount>", description: "price of the jug that a colour's bath is kept in: default 0" },
    {
      flags: "--tolerance <n>",
      description: `CIEDE2000 that a colour must hold to: default ${defaults.shade.tolerance}`,
    },
  ],
  examples: [
    "dipwright offer batch.yaml",
    "dipwright offer batch.yaml --sales 12/month",
    "dipwright offer batch.yaml --quantities 1,20 \\\n    --format csv --out prices.csv",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
