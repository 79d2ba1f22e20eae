import { decimals, digitsCelsius, digitsG, digitsL, digitsMl, digitsPercent, trimmed } from "./digits.js";

/** A volume to pour: in mL below a litre, in L from there on; a barrel is not measured to 10 mL. */
export const pour = (ml: number): string => {
  const volumeL = ml / 1000;
  if (Math.abs(Math.round(ml)) < 1000) return `${digitsMl(ml)} mL`;
  if (Math.abs(volumeL) < 99.995) return `${digitsL(volumeL)} L`;
  return `${decimals(volumeL, Math.abs(volumeL) < 999.95 ? 1 : 0)} L`;
};

/** Whether an amount prints as zero. */
export const isNothing = (amount: string): boolean => /^0(\.0*)? /.test(amount);

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
