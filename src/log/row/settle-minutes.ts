import { inspects } from "./inspect-loads.js";
import type { LocalTime } from "./local-time.js";
import type { LogRow } from "./log-row.js";

/** The same for all times in one minute. */
const minuteOf = ({ seconds }: LocalTime): number => Math.floor(seconds / 60);

/**
 * Rows in the order of the log, with the seconds that a spreadsheet does not show: a reading on the full minute belongs
 * to the last load of its bath in that minute, any other row happened no earlier than the row before it.
 */
export function settleMinutes(rows: readonly LogRow[]): readonly LogRow[] {
  const loads = new Map<string, LocalTime>();
  let before: LocalTime | undefined;
  return rows.map((row) => {
    const key = `${minuteOf(row.time)} ${row.bath}`;
    const beside = inspects(row) ? loads.get(key) : before;
    const full = row.time.seconds % 60 === 0;
    const inMinute = full && beside !== undefined && minuteOf(beside) === minuteOf(row.time);
    const time = inMinute ? beside : row.time;
    if (!inspects(row)) before = time;
    if (row.event === "load") loads.set(key, time);
    return { ...row, time };
  });
}
