/** A duration as it is read off a watch: "42 s", "1 min 32 s", "2 h 5 min". Whole seconds. */
export function duration(seconds: number): string {
  const whole = Math.round(Math.abs(seconds));
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = whole % 60;
  const parts = [
    ...(hours > 0 ? [`${hours} h`] : []),
    ...(minutes > 0 ? [`${minutes} min`] : []),
    ...(rest > 0 || whole === 0 ? [`${rest} s`] : []),
  ];
  return (seconds < 0 && whole > 0 ? "-" : "") + parts.join(" ");
}

/**
 * A time of the working day to the minute: "08:15" where the start is known, else "+0:15" counted from it.
 * Past midnight the day is said: "00:10 +1 d".
 */
export function clock(minute: number, startAtMinute?: number): string {
  const whole = Math.round(minute + (startAtMinute ?? 0));
  const two = (value: number): string => String(value).padStart(2, "0");
  if (startAtMinute === undefined) return `+${Math.floor(whole / 60)}:${two(whole % 60)}`;
  const day = Math.floor(whole / 1440);
  const inDay = whole - day * 1440;
  return `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}${day === 0 ? "" : ` ${day > 0 ? "+" : "-"}${Math.abs(day)} d`}`;
}

/** A stretch of a watch: "0:26-0:35", minutes and seconds; "0:26 on" where it has no end. */
export function stretch(from: number, to: number | null): string {
  const watch = (seconds: number): string => {
    const whole = Math.round(seconds);
    return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
  };
  return to === null ? `${watch(from)} on` : `${watch(from)}-${watch(to)}`;
}
