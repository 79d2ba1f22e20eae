import { cellNumber, extraCells } from "../../csv/csv-cell.js";
import { csvHeader, noHeader } from "../../csv/csv-header.js";
import { csvNumbers } from "../../csv/csv-number.js";
import type { CsvText } from "../../csv/read-csv.js";
import { done, type Fault, failed, type Outcome, warning } from "../../fault.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { UptakePoint } from "./fit-law.js";
import { findColumns, type ReadingColumns } from "./table-columns.js";

export interface UptakeTable {
  readonly points: readonly UptakePoint[];
  readonly timeColumn: string;
  /** Unit of the time column as it was written; the points are in seconds. */
  readonly timeUnit: { readonly name: string; readonly seconds: number };
  readonly uptakeColumn: string;
  readonly meaning: ReadingColumns["meaning"];
}

/**
 * Time and uptake from the rows of a table under its header. K/S is counted from the undyed part: where the table has
 * rows at time 0, their mean is taken off all rows, with a warning. Every bad cell is a fault with its place.
 */
export function readUptakeTable(
  { header: head, rows }: Pick<CsvText, "header" | "rows">,
  uptakeColumn?: string,
): Outcome<UptakeTable> {
  if (head === undefined) return failed(noHeader("time_s,uptake"));
  const named = csvHeader(head);
  if (!named.ok) return named;
  const header = named.value.names;
  const columns = findColumns(named.value, uptakeColumn);
  if (!("time" in columns)) return { ok: false, faults: columns };
  const read = csvNumbers();
  const faults: Fault[] = [];
  const points: UptakePoint[] = [];
  for (const { row, fields: cells } of rows) {
    const extra = extraCells(cells, header.length, row);
    if (extra !== undefined) {
      faults.push(extra);
      continue;
    }
    const [time, uptake] = [columns.time, columns.uptake].map((at) =>
      cellNumber(cells, at, row, header[at]!, read, unitHelp),
    );
    for (const cell of [time!, uptake!]) if (typeof cell !== "number") faults.push(cell);
    if (typeof time === "number" && typeof uptake === "number")
      points.push({ seconds: time * columns.secondsPerUnit, uptake, row });
  }
  if (faults.length > 0) return { ok: false, faults };
  const counted = columns.meaning === "ks" ? fromUndyed(points) : { points, faults: [] };
  return done(
    {
      points: counted.points,
      timeColumn: header[columns.time]!,
      timeUnit: { name: columns.unit, seconds: columns.secondsPerUnit },
      uptakeColumn: header[columns.uptake]!,
      meaning: columns.meaning,
    },
    counted.faults,
  );
}

const unitHelp = "write the number alone; its unit belongs in the name of the column";

/** Takes the mean reading at time 0 off every reading. */
function fromUndyed(points: readonly UptakePoint[]): {
  points: readonly UptakePoint[];
  faults: readonly Fault[];
} {
  const undyed = points.filter(({ seconds }) => seconds === 0);
  if (undyed.length === 0)
    return {
      points,
      faults: [
        warning(
          "table-ks-undyed",
          [],
          "K/S is taken as counted from the undyed part",
          "if it is not, add a row at time 0 with the K/S of the undyed part",
        ),
      ],
    };
  const base = undyed.reduce((sum, { uptake }) => sum + uptake, 0) / undyed.length;
  if (base === 0) return { points, faults: [] };
  return {
    points: points.map((point) => ({ ...point, uptake: point.uptake - base })),
    faults: [
      warning(
        "table-ks-undyed",
        [],
        `K/S ${shortNumber(base, 6)} of the undyed part (time 0) is taken off every row`,
      ),
    ],
  };
}
