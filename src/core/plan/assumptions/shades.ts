import { mapped } from "../../mapped.js";
import { type Assumption, assumption } from "../../model/assumption.js";
import { dyesOf } from "../../model/dyes-of.js";
import { isDyed } from "../../model/undyed.js";
import type { AssumedWork } from "./assumed-work.js";
import { mixtureInWords } from "./mixture-in-words.js";

/** What the colours of mixed baths rest on. */
export const assumedMixtures = ({ batch, mixed, aims }: AssumedWork): Assumption[] =>
  mapped([...mixed.values()], (mix) => {
    const order = batch.orders.find((one) => one.shade?.dye === mix.dye);
    const { mixture, freshSeconds } = aims[order!.index]!;
    return assumption(
      "assumed-mixture",
      ["dyes", mix.dye.name, "mix"],
      mixtureInWords(mix, mixture!, freshSeconds),
    );
  });

/** The shades on another base than that of their dye's swatches. */
export const estimatedBases = ({ batch, aims }: AssumedWork): Assumption[] =>
  batch.orders
    .filter(isDyed)
    .filter((order) => aims[order.index]?.estimated)
    .map(({ index, shade, base }) =>
      assumption(
        "estimated-base",
        ["orders", index],
        `shade "${shade.name}" on ${base?.name} is an estimate: the swatches of dye "${shade.dye.name}" were dyed on ${dyesOf(shade.dye)[0]!.base?.name}`,
      ),
    );
