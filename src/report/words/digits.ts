/** A number with so many decimals; never "-0". */
export function decimals(value: number, places: number): string {
  const text = value.toFixed(places);
  return value < 0 && Number(text) === 0 ? text.slice(1) : text;
}

/** The same without zeros at the end of the fraction. */
export const trimmed = (value: number, places: number): string =>
  decimals(value, places)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");

/** Millilitres as a measuring cylinder reads: whole, or to 0.1 under 10 mL. */
export const digitsMl = (ml: number): string =>
  Math.abs(Number(ml.toFixed(1))) < 10 ? decimals(ml, 1) : decimals(ml, 0);

/** Litres as a measuring jug reads: to 0.01. */
export const digitsL = (litres: number): string => decimals(litres, 2);

/** Grams as a small balance reads: to 0.1. */
export const digitsG = (grams: number): string => decimals(grams, 1);

/** Temperature in °C as a bath thermometer reads: to 0.5. */
export const digitsCelsius = (celsius: number): string => trimmed(Math.round(celsius * 2) / 2, 1);

/** A fraction as a percentage to 0.1. */
export const digitsPercent = (fraction: number): string => trimmed(fraction * 100, 1);

/** Seconds as a watch is read: whole. */
export const digitsSeconds = (seconds: number): string => decimals(seconds, 0);

/** A number to so many significant digits, without an exponent; at most 9 decimals. */
export const significant = (value: number, digits: number): string =>
  value === 0
    ? "0"
    : decimals(value, Math.min(9, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))))));
