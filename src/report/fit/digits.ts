import { duration } from "../../core/quantity/text/duration.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { decimals } from "../words/digits.js";

/** A value as far as its standard error lets it be known: the error to two digits, the value to the same place. */
export function withError(
  value: number,
  error: number | undefined,
): { readonly value: string; readonly error: string } {
  if (error === undefined || !Number.isFinite(error)) return { value: shortNumber(value, 4), error: "" };
  if (error <= 1e-6 * Math.abs(value))
    return { value: shortNumber(value, 6), error: error === 0 ? "0" : shortNumber(error, 2) };
  const places = 1 - Math.floor(Math.log10(Number(error.toPrecision(2))));
  if (places > 12) return { value: shortNumber(value, 4), error: shortNumber(error, 2) };
  return { value: decimals(value, Math.max(0, places)), error: decimals(error, Math.max(0, places)) };
}

/** A time to about three digits: "7.3 s", "4 min 35 s", "5.2 d". */
export function timeSaid(seconds: number): string {
  if (seconds < 120) return `${shortNumber(seconds, seconds < 10 ? 2 : 3)} s`;
  if (seconds >= 2 * 86400) return `${shortNumber(seconds / 86400, 3)} d`;
  const step = seconds < 600 ? 1 : seconds < 7200 ? 10 : 60;
  return duration(Math.round(seconds / step) * step);
}
