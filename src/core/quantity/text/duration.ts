/**
 * A duration in whole seconds, in hours, minutes and seconds.
 * @example
 * duration(41.6) // => "42 s"
 * duration(92) // => "1 min 32 s"
 * duration(7500) // => "2 h 5 min"
 */
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
