import { toKeepLevel, topUpRecords } from "../../bath/load/top-up-rules.js";
import { topUpBelow } from "../../bath/load/work-load.js";
import { type Fault, warning } from "../../fault.js";
import type { Bath, Handling } from "../../model/batch.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { LoadPlan } from "../assign/assign.js";

/** Warnings on a bath as it is when work starts: too full for its loads, below its mark, past its shelf life. */
export function startFaults(
  { index, tank, dye, start, topUp, everyDays }: Bath,
  handling: Handling,
  plans: readonly LoadPlan[],
): Fault[] {
  if (start.kind === "fresh") return [];
  const path = ["baths", index, "start"];
  const where = `the bath of "${dye.name}" in tank "${tank.name}"`;
  const faults: Fault[] = [];
  const room = tank.capacityL * (1 - handling.freeboard);
  const displaced = plans.reduce(
    (most, plan) => Math.max(most, (plan.parts * plan.order.part.volumeCm3) / 1000),
    0,
  );
  if (start.volumeL + displaced > room * (1 + 1e-9))
    faults.push(
      warning(
        "bath-too-full",
        path,
        `${where} starts with ${shortNumber(start.volumeL)} L, and its largest load displaces ${displaced.toFixed(2)} L: that is over its freeboard at ${room.toFixed(2)} L`,
        `take out ${(start.volumeL + displaced - room).toFixed(2)} L first`,
      ),
    );
  if (start.volumeL < topUpBelow * tank.volumeL)
    faults.push(
      warning(
        "bath-starts-low",
        path,
        `${where} starts ${(tank.volumeL - start.volumeL).toFixed(2)} L below its mark of ${shortNumber(tank.volumeL)} L`,
        topUpRecords[topUp].keepsLevel
          ? "it is topped up after load 1; dipwright mix --from-volume gives the amounts to fill it before"
          : `write ${toKeepLevel} to have it filled`,
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
