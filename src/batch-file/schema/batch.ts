import * as z from "zod";
import { done, error, failed } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import { currencyCodes } from "../../core/quantity/currencies.js";
import { nearest } from "../issues/nearest.js";
import { bath, order } from "./bath.js";
import { chosen } from "./chosen.js";
import { dye } from "./dye.js";
import { handling } from "./handling.js";
import { leaf } from "./leaf.js";
import { isMixed, mixedDye } from "./mix.js";
import { part } from "./part.js";
import { date, text, timeOfDay } from "./plain-values.js";
import { money, percent, share } from "./quantities.js";
import { shade } from "./shade.js";
import { dryer, tank } from "./tank.js";
import { base, consumables, pricing, rates, room } from "./workshop.js";

const currency = () =>
  leaf<string>(
    {
      type: "string",
      pattern: `^\\s*(?:${currencyCodes.join("|")})\\s*$`,
      errorMessage: "write the three letters of ISO 4217, such as EUR",
    },
    { description: "ISO 4217 code; required once any money is given", examples: ["EUR"] },
    (input) => {
      const code = typeof input === "string" ? input.trim() : "";
      if (currencyCodes.includes(code)) return done(code);
      const meant = currencyCodes.includes(code.toUpperCase())
        ? code.toUpperCase()
        : nearest(code, currencyCodes);
      return failed(
        error(
          "currency",
          [],
          "this is not a currency code",
          `write the three letters of ISO 4217, such as ${code.length === 3 && meant !== undefined ? meant : "EUR"}`,
        ),
      );
    },
  );

const build = () => {
  const names = <T extends z.ZodType>(of: T, description: string) =>
    z.record(z.string(), of).meta({ description }).optional();
  return z.strictObject({
    batch: text({ description: "name of the batch", examples: ["spring-restock"] }),
    date: date({ description: "day of the batch, ISO 8601", examples: ["2027-04-16"] }).optional(),
    currency: currency().optional(),
    startAt: timeOfDay({
      description: "time of day at which work starts",
      examples: ["08:00"],
      otherwise: "times count from 0",
    }).optional(),
    include: z
      .union([z.string(), z.array(z.string())])
      .meta({
        description: "files of the same form to read first, relative to this file",
        examples: [["workshop.yaml", "dyes.yaml"]],
      })
      .optional(),
    log: text({
      description: "the bath log, for baths with start: log; relative to this file",
      examples: ["baths.csv"],
    }).optional(),
    rates: rates().meta({ description: "what the workshop pays" }).optional(),
    room: room().meta({ description: "the room's air" }).optional(),
    tanks: names(tank(), "tanks by name"),
    dryers: names(dryer(), "dryers by name; the first one is used"),
    bases: names(base(), "undyed materials by name"),
    dyes: names(
      chosen(z.union([dye(), mixedDye()]), (value) => (isMixed(value) ? 1 : 0)),
      "dyes by name",
    ),
    parts: names(part(), "parts by name"),
    shades: names(shade(), "colours that can be ordered, by name"),
    baths: z.array(bath()).meta({ description: "which tank holds which dye" }).optional(),
    orders: z.array(order()).meta({ description: "good parts to make" }).optional(),
    handling: handling().meta({ description: "times and amounts of handling" }).optional(),
    consumables: consumables().meta({ description: "small things that are used up" }).optional(),
    yield: share(
      {
        description: "share of the parts started that come out good",
        examples: ["97 %"],
        default: percent(defaults.yield),
      },
      { positive: true, limits: "above 0 % and up to 100 %" },
    ).optional(),
    rework: share({
      description: "share of the off-shade parts that a second dip corrects",
      examples: ["60 %"],
      default: percent(defaults.rework),
    }).optional(),
    pricing: pricing().meta({ description: "from cost to price" }).optional(),
    limits: z
      .strictObject({
        costPerPart: money({
          description: "highest cost of a good part",
          examples: [3.2],
          otherwise: "no limit",
        }).optional(),
      })
      .meta({ description: "limits; if one is exceeded, the exit status is 1" })
      .optional(),
  });
};

let built: ReturnType<typeof build> | undefined;

/** The schema of a batch file, built on first use. */
export const batchSchema = (): ReturnType<typeof build> => {
  built ??= build();
  return built;
};

/** A batch file as read: names not yet followed, defaults not yet filled in. */
export type RawSpec = z.output<ReturnType<typeof build>>;
