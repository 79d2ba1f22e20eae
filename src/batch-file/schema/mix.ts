import * as z from "zod";
import { isMap } from "../source/is-map.js";
import { check } from "./check.js";
import { hex, lab } from "./colours.js";
import { dilution } from "./dilution.js";
import { oneOfKeys } from "./one-of-forms.js";
import { text } from "./plain-values.js";
import { days, quantity } from "./quantities.js";

const read = ["lab", "hex"] as const;

const amounts = (description: string) =>
  z
    .record(
      z.string(),
      dilution({
        description: "of this dye in a litre of the bath, cold; g/L of a powder",
        examples: ["12 mL/L", "2 g/L"],
      }),
    )
    .meta({ description });

const trial = () =>
  z
    .strictObject({
      time: quantity(
        "time",
        { description: "dip time of the trial", examples: ["60 s"] },
        { positive: true },
      ),
      lab: lab({
        description: "CIELAB of the dried part as read",
        examples: [[58.4, -7.1, 17.2]],
      }).optional(),
      hex: hex({ description: "the same as a screen shows it", examples: ["#75927a"] }).optional(),
      mix: amounts("what was in the bath of the trial, if it was not the recipe").optional(),
    })
    .check(
      check((one, report) => {
        const given = read.filter((key) => key in one);
        if (given.length !== 1)
          report(
            "trial-colour",
            given.length === 0 ? [] : ["hex"],
            given.length === 0 ? "the trial has no colour" : "the trial has two colours",
            given.length === 0 ? "add lab: [58.4, -7.1, 17.2] or hex" : "keep one of lab and hex",
          );
      }),
    )
    .meta(oneOfKeys(read));

/** Several dyes in one bath. */
export const mixedDye = () =>
  z
    .strictObject({
      mix: amounts(
        "the dyes of a mixed bath, each so much in a litre of it, cold: dipwright blend finds them",
      ),
      temperature: quantity("temperature", {
        description: "temperature of the mixed bath",
        examples: ["80 °C"],
        otherwise: "the lowest of its dyes'",
      }).optional(),
      base: text({
        description: "base that its colours and trials are for",
        examples: ["white"],
        otherwise: "that of its dyes",
      }).optional(),
      trials: z
        .array(trial())
        .meta({ description: "dips in the mixed bath whose colour was read: they correct its colours" })
        .optional(),
      shelfLife: days(
        {
          description: "how long a made-up mixed bath keeps",
          examples: ["60 d"],
          otherwise: "the shortest of its dyes'",
        },
        { positive: true },
      ).optional(),
      notes: text({
        description: "anything to print with the plan of the mix",
        examples: ["Stir the straw in last."],
      }).optional(),
    })
    .meta({ description: "several dyes in one bath", placeholder: "MIX" });

/** Whether a dye as written is a mix of others. */
export const isMixed = (value: unknown): boolean => isMap(value) && Object.hasOwn(value, "mix");
