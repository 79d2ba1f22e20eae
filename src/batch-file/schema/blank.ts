import * as z from "zod";
import { defaults } from "../../core/model/defaults.js";
import { isMap } from "../source/is-map.js";
import { chosen } from "./chosen.js";
import type { Snippet } from "./leaf.js";
import { count } from "./plain-values.js";
import { money, quantity, share } from "./quantities.js";

/** What an undyed part is printed from, in a powder bed. */
const blankBuild = () =>
  z
    .strictObject({
      powder: quantity("pricePerMass", { description: "price of fresh powder", examples: ["62.00 /kg"] }),
      refresh: share({
        description: "share of fresh powder in the fill of each build",
        examples: ["40 %"],
      }),
      packing: share(
        {
          description: "mass of the parts divided by the mass of all powder in the build",
          examples: ["10 %"],
        },
        { positive: true, limits: "above 0 % and up to 100 %" },
      ),
      build: quantity(
        "time",
        { description: "time of a whole build, warm-up and cooling included", examples: ["14 h"] },
        { unit: "h", suggest: ["h", "min"], positive: true },
      ),
      partsPerBuild: count({ description: "number of these parts in one build", examples: [180] }),
      machine: quantity("pricePerTime", {
        description: "price of the printer's time",
        examples: ["9.50 /h"],
      }),
      finishing: money({
        description: "cleaning and blasting of one part",
        examples: [0.15],
        default: defaults.blank.finishing,
      }).optional(),
    })
    .meta({
      description: "what the undyed part is printed from",
      snippet: {
        label: "printed from powder",
        description: "what the undyed part is printed from",
      } satisfies Snippet,
    });

const buildKeys = new Set(["powder", "refresh", "packing", "build", "partsPerBuild", "machine", "finishing"]);

/** Whether a map says what a part is printed from; else it gives a cost for each base. */
export const isBuild = (value: unknown): boolean =>
  isMap(value) && Object.keys(value).some((key) => buildKeys.has(key));

const built = () =>
  chosen(
    z
      .union([money({ description: "cost of the undyed part of that base", examples: [1.84] }), blankBuild()])
      .meta({ description: "cost of the undyed part on that base: an amount, or what it is printed from" }),
    (value) => (isMap(value) ? 1 : 0),
  );

/** What the undyed part costs: one amount, what it is printed from, or either for each base. */
export const blank = () =>
  chosen(
    z
      .union([
        money({ description: "cost of the undyed part, whatever its base", examples: [1.84] }),
        z.record(z.string(), built()),
        blankBuild(),
      ])
      .meta({
        description: "cost of the undyed part: one amount, what it is printed from, or either per base",
      }),
    (value) => (isBuild(value) ? 2 : isMap(value) ? 1 : 0),
  );
