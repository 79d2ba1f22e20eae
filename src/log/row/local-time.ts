/** A time of day as the clock on the wall showed it. */
export interface LocalTime {
  /** `2027-04-16T09:30:05` */
  readonly text: string;
  /** Since 1970 by that clock, as if it were never put forward or back [s]. */
  readonly seconds: number;
}

const iso = /^(\d{4})-(\d\d?)-(\d\d?)(?:[T ]|\s+)(\d\d?):(\d\d)(?::(\d\d)(?:[.,]\d+)?)?$/i;
/** As spreadsheets write it where the day comes first; they show the last two digits of the year only. */
const dotted = /^(\d\d?)\.(\d\d?)\.(\d{4}|\d\d),?\s+(\d\d?):(\d\d)(?::(\d\d))?$/;

const two = (value: number): string => String(value).padStart(2, "0");

/** The local time with that date and clock; undefined where the calendar or the clock has none such. */
export function localTime(
  year: number,
  month: number,
  day: number,
  hour: number,
  minute: number,
  second: number,
): LocalTime | undefined {
  if (hour > 23 || minute > 59 || second > 59) return undefined;
  const at = new Date(Date.UTC(year, month - 1, day, hour, minute, second));
  if (at.getUTCMonth() !== month - 1 || at.getUTCDate() !== day) return undefined;
  const date = `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
  return { text: `${date}T${two(hour)}:${two(minute)}:${two(second)}`, seconds: at.getTime() / 1000 };
}

/** Reads `2027-04-16T09:30`, with seconds or without, a blank for the T, or `16.04.2027 09:30` (or .27). */
export function parseLocalTime(text: string): LocalTime | undefined {
  const trimmed = text.trim();
  const isoParts = iso.exec(trimmed);
  const parts = isoParts ?? dotted.exec(trimmed);
  if (parts === null) return undefined;
  const [first, second, third, hour, minute, seconds] = parts.slice(1).map((part) => Number(part ?? 0));
  const [year, month, day] = isoParts === null ? [third, second, first] : [first, second, third];
  return localTime(year! < 100 ? 2000 + year! : year!, month!, day!, hour!, minute!, seconds!);
}
