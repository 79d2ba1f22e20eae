import { loadSize } from "../../../core/bath/load/load-size.js";
import { type Fault, warning } from "../../../core/fault.js";
import type { Batch } from "../../../core/model/batch.js";
import { inRow } from "../../read/in-row.js";
import type { FollowedFilling } from "../followed-filling.js";

/** Nobody fills a rack with so many times what it holds: a slip of the pen is likelier. Common practice, no source. */
const mostTimes = 2;

/** Warnings where a load has far more parts than fit. */
export const crowdedLoads = ({ parts, handling }: Batch, fillings: readonly FollowedFilling[]): Fault[] =>
  fillings.flatMap(({ of: { tank }, filling: { rows } }) =>
    rows.flatMap((row) => {
      const part = row.event === "load" ? parts.find(({ name }) => name === row.part) : undefined;
      if (row.event !== "load" || part === undefined) return [];
      const most = loadSize(part, tank, handling).parts;
      return row.parts <= mostTimes * most
        ? []
        : [
            inRow(
              row.row!,
              "parts",
              warning(
                "log-many-parts",
                [],
                `a load of tank "${tank.name}" holds ${most} of part "${part.name}", not ${row.parts}`,
                "correct the row, or write perLoad and liquorRatio as they are",
              ),
            ),
          ];
    }),
  );
