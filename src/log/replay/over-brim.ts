import type { RealBath } from "../../core/bath/replay/real-bath.js";
import { error, type Fault } from "../../core/fault.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { inRow } from "../read/in-row.js";
import type { LogValues } from "../row/log-values.js";

/** Over so many times the tank's capacity, which may itself be assumed, a level was not read but mistyped [-]. Common practice, no source. */
const mostCapacities = 2;

const columns = { volumeL: 1, concentrateMl: 1000, waterMl: 1000 } as const;

/** Levels and amounts that the tank cannot hold: a decimal mark was lost. */
export const overBrim = (
  { setting }: RealBath,
  row: Pick<LogValues, keyof typeof columns> & { readonly row?: number },
): Fault[] =>
  Object.entries(columns).flatMap(([name, perLitre]) => {
    const value = row[name as keyof typeof columns];
    const { capacityL } = setting.tank;
    return value === undefined || value / perLitre <= mostCapacities * capacityL
      ? []
      : [
          inRow(
            row.row!,
            name,
            error(
              "log-over-brim",
              [],
              `${value} ${perLitre === 1 ? "L" : "mL"} is more than ${mostCapacities} times what the tank holds, ${shortNumber(capacityL)} L`,
              "correct it: a spreadsheet takes 5.125 for 5125 where the decimal mark is a comma",
            ),
          ),
        ];
  });
