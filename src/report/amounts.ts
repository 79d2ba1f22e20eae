import { decimals, digitsCelsius, digitsG, digitsL, digitsMl, digitsPercent, trimmed } from "./digits.js";

/** A volume to pour: in mL below a litre, in L from there on. */
export const pour = (ml: number): string =>
  Math.abs(Math.round(ml)) < 1000 ? `${digitsMl(ml)} mL` : `${digitsL(ml / 1000)} L`;

/** A mass to weigh: in g below a kilogram, in kg to 0.001 from there on. */
export const weigh = (grams: number): string =>
  Math.abs(Number(grams.toFixed(1))) < 1000 ? `${digitsG(grams)} g` : `${decimals(grams / 1000, 3)} kg`;

/** Litres to measure, with their unit: always to 0.01. */
export const litres = (volumeL: number): string => `${digitsL(volumeL)} L`;

/** A volume in running text: "6 L", "5.6 L", "300 mL". */
export const volumeSaid = (volumeL: number): string =>
  Math.abs(volumeL) < 1 ? `${trimmed(volumeL * 1000, 1)} mL` : `${trimmed(volumeL, 2)} L`;

/** A temperature with its unit. */
export const degrees = (celsius: number): string => `${digitsCelsius(celsius)} °C`;

/** A fraction as a percentage. */
export const percent = (fraction: number): string => `${digitsPercent(fraction)} %`;

/** Grams in running text: "250 g", "1.25 kg". */
export const gramsSaid = (grams: number): string =>
  Math.abs(grams) < 1000 ? `${trimmed(grams, 1)} g` : `${trimmed(grams / 1000, 3)} kg`;
