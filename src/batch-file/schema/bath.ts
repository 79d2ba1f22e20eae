import * as z from "zod";
import { topUpRecords, topUpRules } from "../../core/bath/load/top-up-rules.js";
import type { TopUpRule } from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import { isMap } from "../source/is-map.js";
import { check } from "./check.js";
import { chosen } from "./chosen.js";
import { hex, lab } from "./colours.js";
import type { Meaning, Snippet } from "./leaf.js";
import { oneOfKeys } from "./one-of-forms.js";
import { count, date, text } from "./plain-values.js";
import { days, percent, quantity, written } from "./quantities.js";

/** How the volume of a kept bath is given: in the tank, or in its jug. */
const keptVolumes = ["volume", "coldVolume"] as const;

const strength = (meaning: Omit<Meaning, "examples">) =>
  quantity(
    "percent",
    { examples: ["92 %"], ...meaning },
    { least: 0, most: 10, limits: "between 0 % and 1000 %" },
  );

/** A bath that is not fresh. */
const kept = () =>
  z
    .strictObject({
      volume: quantity(
        "volume",
        { description: "volume in the tank, measured hot", examples: ["5.6 L"] },
        { positive: true },
      ).optional(),
      coldVolume: quantity(
        "volume",
        { description: "volume at room temperature, as the jug shows it", examples: ["5.4 L"] },
        { positive: true },
      ).optional(),
      strength: chosen(
        z
          .union([
            strength({
              description: "dye per volume relative to a fresh bath",
              default: percent(defaults.keptBath.strength),
            }),
            z.record(z.string(), strength({ description: "of one dye of a mix" })),
          ])
          .meta({
            description: "dye per volume relative to a fresh bath; of a mix also for each of its dyes",
            examples: ["92 %"],
          }),
        (value) => (isMap(value) ? 1 : 0),
      ).optional(),
      age: days({
        description: "time since it was made up",
        examples: ["12 d"],
        default: written("time", defaults.keptBath.ageDays, { from: "d" }),
      }).optional(),
      area: quantity(
        "area",
        {
          description: "area dyed in it so far",
          examples: ["3.1 m2"],
          default: written("area", defaults.keptBath.areaDm2, { to: "m2" }),
        },
        { suggest: ["m2", "dm2"] },
      ).optional(),
    })
    .check(
      check((start, report) => {
        const given = keptVolumes.filter((key) => key in start);
        if (given.length === 0)
          report(
            "kept-volume",
            [],
            "the kept bath has no volume",
            "add volume: 5.6 L as measured hot in the tank, or coldVolume: 5.4 L as the jug shows it",
          );
        else if (given.length > 1)
          report(
            "kept-volume",
            ["coldVolume"],
            "the kept bath has two volumes, one hot and one cold",
            "keep one of volume and coldVolume",
            "key",
          );
      }),
    )
    .meta({
      ...oneOfKeys(keptVolumes),
      description: "a bath that was kept",
      snippet: { label: "kept", description: "a bath that was kept" } satisfies Snippet,
    });

const described = (rule: TopUpRule): string => {
  const { described: does } = topUpRecords[rule];
  return does === "" ? rule : `${rule} (${does})`;
};

/** A tank filled with a dye. */
export const bath = () =>
  z.strictObject({
    tank: text({ description: "tank that holds it", examples: ["six"] }),
    dye: text({ description: "dye in it", examples: ["coral"] }),
    start: z
      .union([
        z.enum(["fresh", "log"]).meta({
          description: "fresh: made up for this batch; log: as the bath log leaves it",
          default: "fresh",
        }),
        kept(),
      ])
      .meta({ description: "what is in the tank before the first load" })
      .optional(),
    trial: z
      .strictObject({
        time: quantity(
          "time",
          { description: "dip time of the trial", examples: ["45 s"] },
          { positive: true },
        ),
        lab: lab({
          description: "CIELAB of the dried part as read",
          examples: [[69.0, 39.8, 20.1]],
        }).optional(),
        hex: hex({
          description: "its colour as a screen shows it, sRGB, D65/2",
          examples: ["#d9603b"],
        }).optional(),
      })
      .check(
        check((trial, report) => {
          const given = (["lab", "hex"] as const).filter((key) => key in trial);
          if (given.length !== 1)
            report(
              "trial-colour",
              [],
              given.length === 0 ? "the trial has no colour" : "the trial has two colours",
              "write one: lab: [69.0, 39.8, 20.1], or hex",
            );
        }),
      )
      .meta({
        description: "one dip in this bath as it is now: corrects all times in it",
        ...oneOfKeys(["lab", "hex"]),
      })
      .optional(),
    topUp: z
      .enum(topUpRules)
      .meta({
        description: `after a load: ${topUpRules.map(described).join(", ")}`,
        default: defaults.bath.topUp,
      })
      .optional(),
    after: z
      .enum(["keep", "dump"])
      .meta({
        description: "after the batch: keep (poured back in its jug) or dump",
        default: defaults.bath.after,
      })
      .optional(),
    every: days(
      { description: "how often this batch repeats, for the bath's life", examples: ["1 d"] },
      { positive: true },
    ).optional(),
  });

/** Good parts of one kind to make. */
export const order = () =>
  z.strictObject({
    part: text({ description: "part to make", examples: ["hook"] }),
    shade: text({ description: "shade to dye it in; none: undyed parts", examples: ["coral-light"] }),
    base: text({
      description: "base of the undyed part",
      examples: ["white"],
      otherwise: "that of the dye's swatches",
    }).optional(),
    quantity: count({ description: "number of good parts to make", examples: [120] }),
    due: date({
      description: "last day on which the order may be ready, for week",
      examples: ["2027-04-16"],
      otherwise: "any day: after the orders that have one",
    }).optional(),
  });
