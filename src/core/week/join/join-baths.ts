import { error, type Fault, warning } from "../../fault.js";
import type { Batch, Bath } from "../../model/batch.js";
import { isSameBath } from "./same-bath.js";

/** The baths of several batches, each once. */
interface JoinedBaths {
  readonly baths: readonly Bath[];
  /** The day that a kept bath's age is of, where a log tells it. */
  readonly agedOn: ReadonlyMap<Bath, string>;
  readonly faults: readonly Fault[];
}

const sameData = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Every bath once, by tank and dye. */
export function joinBaths(batches: readonly Batch[], ofTheShop: (bath: Bath) => Bath): JoinedBaths {
  const found: { readonly bath: Bath; readonly file: number }[] = [];
  const faults: Fault[] = [];
  batches.forEach((batch, file) => {
    for (const bath of batch.baths) {
      const at = found.findIndex((one) => isSameBath(one.bath, bath));
      const before = found[at];
      if (before === undefined) {
        found.push({ bath, file });
        continue;
      }
      if (before.file === file)
        faults.push(
          warning(
            "bath-twice",
            [file, "baths", bath.index],
            `the batch has two baths of "${bath.dye.name}" in tank "${bath.tank.name}", of which the week works one`,
            "keep one of them: a week carries a bath on from day to day",
          ),
        );
      const differs = (["topUp", "after"] as const).filter((key) => before.bath[key] !== bath[key]);
      for (const key of differs)
        faults.push(
          error(
            "bath-differs",
            [file, "baths", bath.index, key],
            `the bath of "${bath.dye.name}" in tank "${bath.tank.name}" has ${key}: ${bath[key]} here and ${key}: ${before.bath[key]} in batch "${batches[before.file]!.name}"`,
            "write the same in both: it is one bath, kept from day to day",
          ),
        );
      const now = { bath, file };
      const startsHere = bath.start.kind !== "fresh" && before.bath.start.kind === "fresh";
      const [kept, other] = startsHere ? [now, before] : [before, now];
      found[at] = kept;
      if (other.bath.trial !== undefined && !sameData(other.bath.trial, kept.bath.trial))
        faults.push(
          error(
            "bath-differs",
            [other.file, "baths", other.bath.index, "trial"],
            `the bath of "${bath.dye.name}" in tank "${bath.tank.name}" has ${kept.bath.trial === undefined ? "a trial here and none" : "another trial here than"} in batch "${batches[kept.file]!.name}"`,
            "write one trial, in the first file that has the bath or its kept start: it is one bath",
          ),
        );
      if (bath.start.kind === "fresh" || before.bath.start.kind === "fresh") continue;
      if (!sameStart(before.bath.start, bath.start))
        faults.push(
          error(
            "bath-differs",
            [file, "baths", bath.index, "start"],
            `the bath of "${bath.dye.name}" in tank "${bath.tank.name}" has another start here than in batch "${batches[before.file]!.name}"`,
            "keep one start: it is one bath, and the week carries it on from day to day",
          ),
        );
    }
  });
  const baths = found.map(({ bath }, index) => ({ ...ofTheShop(bath), index }));
  const agedOn = new Map(
    baths.flatMap((bath, i): [Bath, string][] => {
      const day = logDay(bath.start, batches[found[i]!.file]!.date);
      return day === undefined ? [] : [[bath, day]];
    }),
  );
  return { baths, agedOn, faults };
}

/** The day of its batch, or of the log's last row, whichever is later. */
function logDay(start: Bath["start"], date: string | undefined): string | undefined {
  if (start.kind === "fresh" || start.log === undefined) return undefined;
  const row = start.log.time.slice(0, 10);
  return date !== undefined && date > row ? date.slice(0, 10) : row;
}

type Kept = Extract<Bath["start"], { kind: "kept" }>;

/** A bath from one row of a log is the same, however old it is on the days of its batches. */
const sameStart = (a: Kept, b: Kept): boolean =>
  (a.log !== undefined && a.log.row === b.log?.row && a.log.file === b.log.file) ||
  ((["volumeL", "strength", "ageDays", "areaDm2"] as const).every((key) => a[key] === b[key]) &&
    sameData(a.strengthEach, b.strengthEach));
