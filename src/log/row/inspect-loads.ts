import { done, error, type Fault, failed, type Outcome, warning } from "../../core/fault.js";
import type { Inspection, LoadRow, LogRow, MeasuredRow } from "./log-row.js";

/** How many parts passed and failed, one from the other, or why they do not add up to the parts of the load. */
export function settleCounts(
  parts: number,
  { good, rejected }: Pick<Inspection, "good" | "rejected">,
): Outcome<Pick<Inspection, "good" | "rejected">> {
  if (good === undefined && rejected === undefined) return done({});
  const passed = good ?? parts - rejected!;
  const failing = rejected ?? parts - good!;
  if (passed >= 0 && failing >= 0 && passed + failing === parts)
    return done({ good: passed, rejected: failing });
  const said = [
    ...(good === undefined ? [] : [`${good} good`]),
    ...(rejected === undefined ? [] : [`${rejected} rejected`]),
  ].join(" and ");
  return failed(
    error(
      "log-counts",
      [good === undefined ? "rejected" : "good"],
      `${said} do not add up to the ${parts} parts of the load`,
      "good and rejected together are parts; leave one of them out, or both where nobody looked",
    ),
  );
}

/** Whether a row says something about the bath's last load. */
export const inspects = (row: LogRow): row is MeasuredRow =>
  row.event === "measured" &&
  (row.lab !== undefined ||
    row.good !== undefined ||
    row.rejected !== undefined ||
    row.powderLot !== undefined);

/** The load that a row of a bath belongs to: the last one up to its time. */
export const loadBefore = (rows: readonly LogRow[], { bath, time }: LogRow): LoadRow | undefined =>
  rows.findLast(
    (row): row is LoadRow => row.event === "load" && row.bath === bath && row.time.seconds <= time.seconds,
  );

/** A load with what was found out about it later. */
function inspected(load: LoadRow, { lab, good, rejected, powderLot }: MeasuredRow): Outcome<LoadRow> {
  const counts = settleCounts(load.parts, {
    ...(good === undefined ? {} : { good }),
    ...(rejected === undefined ? {} : { rejected }),
  });
  if (!counts.ok) return counts;
  const again = lab !== undefined && load.lab !== undefined;
  return done(
    {
      ...load,
      ...counts.value,
      ...(lab === undefined ? {} : { lab }),
      ...(powderLot === undefined ? {} : { powderLot }),
    },
    again
      ? [
          warning(
            "log-read-twice",
            ["L"],
            `the load of ${load.time.text} has a colour already; the later reading counts`,
            "give the time of the load that was read",
          ),
        ]
      : [],
  );
}

/**
 * Rows in the order of time, with what measured rows say of a load moved to it: to the last load of the bath up to the
 * row's time. A measured row that says nothing of the bath itself is left out. A fault's path is the row, then the column.
 */
export function inspectLoads(rows: readonly LogRow[]): {
  readonly rows: readonly LogRow[];
  readonly faults: readonly { readonly row: LogRow; readonly fault: Fault }[];
} {
  const result: LogRow[] = [];
  const faults: { row: LogRow; fault: Fault }[] = [];
  const lastLoad = new Map<string, number>();
  for (const row of rows) {
    if (!inspects(row)) {
      if (row.event === "load") lastLoad.set(row.bath, result.length);
      result.push(row);
      continue;
    }
    const at = lastLoad.get(row.bath);
    if (at === undefined)
      faults.push({
        row,
        fault: warning(
          "log-no-load",
          ["bath"],
          `no load of bath ${row.bath} comes before this reading`,
          "give the time of the load, or record the load first",
        ),
      });
    else {
      const load = inspected(result[at] as LoadRow, row);
      faults.push(...load.faults.map((fault) => ({ row, fault })));
      if (load.ok) result[at] = load.value;
    }
    const { lab: _lab, good: _good, rejected: _rejected, powderLot: _lot, ...bath } = row;
    if (bath.celsius !== undefined || bath.volumeL !== undefined) result.push(bath);
  }
  return { rows: result, faults };
}
