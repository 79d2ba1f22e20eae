import { newStyle } from "../../../src/log/read/log-style.js";
import { columnNames } from "../../../src/log/row/columns.js";
import type { LogRow } from "../../../src/log/row/log-row.js";

/** Rows as `record` would have written them. */
export function asCsv(rows: readonly LogRow[]): string {
  const cells = (row: LogRow): string => {
    const { time, ...others } = row as LogRow & { lab?: readonly number[] };
    const [L, a, b] = others.lab ?? [];
    const values: Record<string, unknown> = { ...others, time: time.text, L, a, b };
    return columnNames.map((name) => values[name] ?? "").join(",");
  };
  return [columnNames.join(","), ...rows.map(cells), ""].join(newStyle.lineEnd);
}
