import { type Assumption, assumption } from "../../model/assumption.js";
import type { AssumedHandling, Batch, Handling } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { rangeInWords } from "../../quantity/text/range-in-words.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { type AssumedWork, costShareOf } from "./assumed-work.js";
import { foundInWords } from "./found-in-words.js";

/** Whether a part is dyed that carries out what parts usually do. */
const usesUsualDragOut = ({ orders }: Batch): boolean =>
  orders.some(({ part, shade }) => shade !== undefined && part.dragOutMlPerDm2 === undefined);

/** The drag-out that was estimated or assumed. */
export function assumedDragOut(work: AssumedWork): Assumption[] {
  const { batch } = work;
  const { dragOutMlPerDm2, dragOutFound, dragOutAssumed } = batch.handling;
  const path = ["handling", "dragOut"];
  if (dragOutFound)
    return [
      assumption(
        dragOutAssumed ? "partly-assumed-drag-out" : "estimated-drag-out",
        path,
        `${dragOutMlPerDm2.toPrecision(2)} mL of liquor carried out per dm2 is ${foundInWords(dragOutFound)}`,
      ),
    ];
  if (!dragOutAssumed || !usesUsualDragOut(batch)) return [];
  return [
    assumption(
      "assumed-drag-out",
      path,
      `${dragOutMlPerDm2} mL of liquor carried out per dm2, ${rangeInWords(defaults.handling.dragOutMlPerDm2.factor)}, is assumed`,
      { help: "weigh ten parts wet and dry for your own figure", ...costShareOf(work, "dragOut") },
    ),
  ];
}

/** A time of the handling as the batch file would give it. */
function timeInWords(handling: Handling, key: Exclude<AssumedHandling, "liquorRatio">): string {
  return key === "dryerLoading" || key === "setUp" || key === "cleanUp"
    ? `${key}: ${shortNumber(handling[`${key}Minutes`])} min`
    : `${key}: ${shortNumber(handling[`${key}Seconds`])} s`;
}

/** The times of the work at a bath that are left at their defaults. */
export function assumedTimes(work: AssumedWork): Assumption[] {
  const { handling } = work.batch;
  const times = handling.assumed.filter((key) => key !== "liquorRatio");
  if (times.length === 0 || work.runs.length === 0) return [];
  return [
    assumption(
      "assumed-handling",
      ["handling"],
      `handling times are assumed where none are given (${times.map((key) => timeInWords(handling, key)).join(", ")})`,
      { help: "time your own with a watch", ...costShareOf(work, "handlingTimes") },
    ),
  ];
}

/** What the hands do in this day and no time is given for. */
export function uncountedTimes({ batch, runs }: AssumedWork): Assumption[] {
  const { topUpSeconds, rinseChangeSeconds, rinseEvery } = batch.handling;
  const uncounted = (key: string, what: string): Assumption =>
    assumption(
      "uncounted-time",
      ["handling", key],
      `${what} takes no time in this day: write ${key} under handling`,
    );
  return [
    ...(topUpSeconds === undefined &&
    runs.some(({ loads }) => loads.some(({ result }) => result.topUp !== null))
      ? [uncounted("topUpTime", "topping up")]
      : []),
    ...(rinseChangeSeconds === undefined && runs.some(({ loads }) => loads.length > rinseEvery)
      ? [uncounted("rinseChange", "changing the rinse water")]
      : []),
  ];
}
