import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { cellNumber, extraCells } from "../../csv/csv-cell.js";
import { csvHeader, noHeader } from "../../csv/csv-header.js";
import { csvNumbers } from "../../csv/csv-number.js";
import type { CsvText } from "../../csv/read-csv.js";
import { done, error, type Fault, type Outcome, warning } from "../../fault.js";
import type { Lab } from "../../model/batch.js";

/** Columns that a table of swatch readings must have, and those that it may have. */
export const swatchColumns = ["time_s", "L", "a", "b"] as const;
export const bathColumns = ["strength_pct", "bath_C"] as const;

/** A swatch as it was read, the mean of its repeats. */
export interface ReadSwatch {
  /** 0: the bare base. */
  readonly seconds: number;
  /** Absent: a fresh bath. */
  readonly strength?: number;
  /** Absent: the dye's own temperature. */
  readonly celsius?: number;
  readonly lab: Lab;
  readonly readings: number;
}

/** Least difference between repeats of one dip that gives a warning [CIEDE2000]. */
const driftFrom = 1;

interface Reading {
  readonly seconds: number;
  readonly strength: number | undefined;
  readonly celsius: number | undefined;
  readonly lab: Lab;
}

const mean = (labs: readonly Lab[]): Lab =>
  [0, 1, 2].map((axis) => labs.reduce((sum, lab) => sum + lab[axis]!, 0) / labs.length) as unknown as Lab;

/**
 * Swatches from a table of readings with the columns time_s, L, a, b and, where they were filled in, strength_pct and
 * bath_C. Rows without a colour are left out; repeats of one dip are averaged, and told where they differ by 1 CIEDE2000
 * and more.
 * @param ownCelsius the dye's temperature: baths of it need no temperature of their own [°C]
 */
export function readSwatches(
  { header: head, rows }: Pick<CsvText, "header" | "rows">,
  ownCelsius: number,
): Outcome<readonly ReadSwatch[]> {
  if (head === undefined) return { ok: false, faults: [noHeader("time_s,L,a,b")] };
  const header = csvHeader(head, swatchColumns);
  if (!header.ok) return header;
  const { names, at } = header.value;
  const read = csvNumbers();
  const faults: Fault[] = [];
  const found: Reading[] = [];
  for (const { row, fields } of rows) {
    const extra = extraCells(fields, names.length, row);
    if (extra !== undefined) {
      faults.push(extra);
      continue;
    }
    const empty = (column: string): boolean => (fields[at(column) ?? -1] ?? "").trim() === "";
    if (["L", "a", "b"].every(empty)) continue;
    const cell = (column: string): number | undefined => {
      const value = cellNumber(fields, at(column)!, row, column, read);
      if (typeof value === "number") return value;
      faults.push(value);
      return undefined;
    };
    const given = (column: string): number | undefined =>
      at(column) === undefined || empty(column) ? undefined : cell(column);
    const [seconds, L, a, b] = swatchColumns.map(cell);
    const [percent, celsius] = bathColumns.map(given);
    if (seconds === undefined || L === undefined || a === undefined || b === undefined) continue;
    const bad = rangeFault(row, seconds, L, percent);
    if (bad !== undefined) faults.push(bad);
    else
      found.push({
        seconds,
        strength: percent === undefined || percent === 100 ? undefined : percent / 100,
        celsius: celsius === ownCelsius ? undefined : celsius,
        lab: [L, a, b],
      });
  }
  if (faults.length > 0) return { ok: false, faults };
  if (found.length === 0)
    return {
      ok: false,
      faults: [error("swatches-unread", [], "no row has a colour", "fill in L, a and b of the swatches")],
    };
  return done(...averaged(found));
}

function rangeFault(row: number, seconds: number, L: number, percent: number | undefined): Fault | undefined {
  const say = (column: string, message: string): Fault =>
    error("swatch-range", ["row", row, column], `row ${row}, column ${column}: ${message}`);
  if (seconds < 0) return say("time_s", "a dip time is 0 s or more");
  if (L < 0 || L > 100) return say("L", "lightness is between 0 and 100");
  if (percent !== undefined && !(percent >= 5 && percent <= 300))
    return say("strength_pct", "the strength of a bath is between 5 and 300 %");
  return undefined;
}

function averaged(found: readonly Reading[]): [readonly ReadSwatch[], readonly Fault[]] {
  const groups = new Map<string, Reading[]>();
  for (const reading of found) {
    const key = `${reading.seconds} ${reading.strength} ${reading.celsius}`;
    const same = groups.get(key);
    if (same) same.push(reading);
    else groups.set(key, [reading]);
  }
  const swatches: ReadSwatch[] = [];
  const faults: Fault[] = [];
  for (const same of groups.values()) {
    const { seconds, strength, celsius } = same[0]!;
    const labs = same.map(({ lab }) => lab);
    const apart = ciede2000(labs[0]!, labs.at(-1)!);
    if (apart >= driftFrom)
      faults.push(
        warning(
          "swatch-drift",
          [],
          `the first and the last reading of ${seconds} s differ by ${apart.toFixed(1)} CIEDE2000: the bath, the timing or the reading drifted`,
          "dip and read both again if you can; the mean is taken",
        ),
      );
    swatches.push({
      seconds,
      ...(strength === undefined ? {} : { strength }),
      ...(celsius === undefined ? {} : { celsius }),
      lab: mean(labs),
      readings: same.length,
    });
  }
  const order = (swatch: ReadSwatch): number => (swatch.strength || swatch.celsius ? 1 : 0);
  swatches.sort((one, other) => order(one) - order(other) || one.seconds - other.seconds);
  return [swatches, faults];
}
