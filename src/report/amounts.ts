import { decimals, digitsCelsius, digitsG, digitsL, digitsMl, digitsPercent } from "./digits.js";

/** A volume to pour: in mL below a litre, in L from there on. */
export const pour = (ml: number): string =>
  Math.abs(Math.round(ml)) < 1000 ? `${digitsMl(ml)} mL` : `${digitsL(ml / 1000)} L`;

/** A mass to weigh: in g below a kilogram, in kg to 0.001 from there on. */
export const weigh = (grams: number): string =>
  Math.abs(Number(grams.toFixed(1))) < 1000 ? `${digitsG(grams)} g` : `${decimals(grams / 1000, 3)} kg`;

/** Litres with their unit. */
export const litres = (volumeL: number): string => `${digitsL(volumeL)} L`;

/** A temperature with its unit. */
export const degrees = (celsius: number): string => `${digitsCelsius(celsius)} °C`;

/** A fraction as a percentage. */
export const percent = (fraction: number): string => `${digitsPercent(fraction)} %`;

/** An amount of money at its minor unit. `round` is the currency's own rounding; `places` its decimals. */
export const money = (
  amount: number,
  currency: string,
  places: number,
  round: (amount: number, places: number) => number,
): string => `${decimals(round(amount, places), places)} ${currency}`;
