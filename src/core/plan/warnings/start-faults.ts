import { topUpBelow } from "../../bath/load/load-size.js";
import { toKeepLevel, topUpRecords } from "../../bath/load/top-up-rules.js";
import { error, type Fault, warning } from "../../fault.js";
import type { Batch, Bath } from "../../model/batch.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { Portion } from "../assign/assign.js";

/** What is wrong with a bath when work starts: too full for its loads, below its mark, past its shelf life. */
export function startFaults(
  { handling }: Pick<Batch, "handling">,
  { index, tank, dye, start, topUp, everyDays }: Bath,
  portions: readonly Portion[],
): Fault[] {
  if (start.kind === "fresh") return [];
  const path = ["baths", index, "start"];
  const where = `the bath of "${dye.name}" in tank "${tank.name}"`;
  const faults: Fault[] = [];
  if (start.volumeL * topUpBelow > tank.volumeL * (1 + 1e-9)) {
    const aboveL = start.volumeL - tank.volumeL;
    const room = tank.capacityL * (1 - handling.freeboard);
    const fits = portions.every(({ part }) => start.volumeL + part.volumeCm3 / 1000 <= room * (1 + 1e-9));
    faults.push(
      (fits ? warning : error)(
        "bath-too-full",
        path,
        `${where} starts with ${shortNumber(start.volumeL)} L, ${aboveL.toFixed(2)} L above its mark: ${fits ? "its loads may be smaller for it" : `not one part goes in under the freeboard at ${room.toFixed(2)} L`}`,
        `take out ${aboveL.toFixed(2)} L first`,
      ),
    );
  }
  if (!topUpRecords[topUp].keepsLevel && start.volumeL < topUpBelow * tank.volumeL)
    faults.push(
      warning(
        "bath-starts-low",
        path,
        `${where} starts ${(tank.volumeL - start.volumeL).toFixed(2)} L below its mark of ${shortNumber(tank.volumeL)} L`,
        `write ${toKeepLevel} to have it filled before it is heated`,
      ),
    );
  if (dye.shelfLifeDays !== undefined && start.ageDays > dye.shelfLifeDays)
    faults.push(
      warning(
        "bath-too-old",
        path,
        `${where} is ${start.ageDays} d old, past the shelf life of ${dye.shelfLifeDays} d`,
        "make it up fresh: start: fresh",
      ),
    );
  else if (
    dye.shelfLifeDays !== undefined &&
    everyDays !== undefined &&
    start.ageDays + everyDays > dye.shelfLifeDays
  )
    faults.push(
      warning(
        "bath-ages-out",
        path,
        `${where} will be ${start.ageDays + everyDays} d old at the next batch, past its shelf life of ${dye.shelfLifeDays} d`,
        "plan to make it up fresh then",
      ),
    );
  return faults;
}
