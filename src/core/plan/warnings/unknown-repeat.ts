import { type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch } from "../../model/batch.js";

/**
 * Kept baths of a dye with a shelf life in a batch that does not say how often it is repeated: they are taken to last
 * as many loads as they can, however long that takes, so that this batch pays for a small share of them.
 */
export const unknownRepeats = ({ baths }: Pick<Batch, "baths">): Fault[] =>
  mapped(
    baths.filter(
      ({ dye, everyDays, after }) =>
        dye.shelfLifeDays !== undefined && everyDays === undefined && after === "keep",
    ),
    (bath) =>
      warning(
        "unknown-repeat",
        ["baths", bath.index],
        `the bath of "${bath.dye.name}" in tank "${bath.tank.name}" is kept, and how often this batch is repeated is not known: its life, and the share of its dye, water and disposal that this batch pays, leave the shelf life out`,
        "write every: 7 d for the bath, or after: dump",
      ),
  );
