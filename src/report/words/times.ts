/**
 * A time of the working day to the minute: "08:15" where the start is known, else "+0:15" counted from it.
 * Past midnight the day is added: "00:10 +1 d".
 */
export function clock(minute: number, startAtMinute?: number): string {
  const whole = Math.round(minute + (startAtMinute ?? 0));
  const two = (value: number): string => String(value).padStart(2, "0");
  if (startAtMinute === undefined) return `+${Math.floor(whole / 60)}:${two(whole % 60)}`;
  const day = Math.floor(whole / 1440);
  const inDay = whole - day * 1440;
  return `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}${day === 0 ? "" : ` ${day > 0 ? "+" : "-"}${Math.abs(day)} d`}`;
}

/** Seconds as a watch shows them: "2:05", minutes and seconds. */
export function watch(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** A stretch of a watch: "0:26-0:35"; "0:26 on" where it has no end. */
export function stretch(from: number, to: number | null): string {
  return to === null ? `${watch(from)} on` : `${watch(from)}-${watch(to)}`;
}
