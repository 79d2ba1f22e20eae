import { done, error, failed, type Outcome } from "../fault.js";
import type { Colour, Lab, Reading } from "../model/colour.js";
import { standardReading } from "../model/defaults.js";
import { hexToSrgb } from "./screen/css-colour.js";
import { srgbReading, srgbToLab } from "./screen/srgb.js";
import { carryOver } from "./spectrum/convert-reading.js";
import { type Spectrum, spectrumLab } from "./spectrum/spectrum.js";

/**
 * A sampled curve as a spectrum at equal steps of 5 or 10 nm on the 5 nm grid, 400 to 700 nm or wider.
 * @example spectrumOf([400, 410, 420], [0.1, 0.2, 0.3]).ok // => false
 */
export function spectrumOf(
  wavelengthsNm: readonly number[],
  reflectance: readonly number[],
): Outcome<Spectrum> {
  const [firstNm = Number.NaN, second = Number.NaN] = wavelengthsNm;
  const stepNm = second - firstNm;
  const lastNm = wavelengthsNm.at(-1) ?? Number.NaN;
  const refuse = (message: string): Outcome<never> => failed(error("reflectance-grid", [], message));
  if (wavelengthsNm.length !== reflectance.length)
    return refuse(`${wavelengthsNm.length} wavelengths but ${reflectance.length} values`);
  if (stepNm !== 5 && stepNm !== 10) return refuse("reflectance must be sampled every 5 or every 10 nm");
  if (firstNm % 5 !== 0 || wavelengthsNm.some((nm, i) => nm !== firstNm + i * stepNm))
    return refuse(`wavelengths must rise by ${stepNm} nm each, in whole multiples of 5 nm`);
  if (firstNm > 400 || lastNm < 700)
    return refuse(`reflectance must span 400 to 700 nm, not ${firstNm} to ${lastNm}`);
  const bad = reflectance.findIndex((value) => !(value >= 0 && value <= 1));
  if (bad >= 0)
    return refuse(`reflectance at ${wavelengthsNm[bad]} nm must lie in 0 to 1, not ${reflectance[bad]}`);
  return done({ firstNm, stepNm, reflectance });
}

/** The reading of colours that were given without one: the screen's where all are hex, else the standard one. */
export const defaultReading = (colours: readonly Colour[]): Reading =>
  colours.every(({ kind }) => kind === "hex") ? srgbReading : standardReading;

/**
 * The CIELAB of a colour under a reading. `lab` is taken to be read under it already; reflectance is computed
 * for it; hex is sRGB (D65, 2°) and carried over through its smoothest reflectance if the reading differs.
 */
export function resolveLab(colour: Colour, reading: Reading): Outcome<Lab> {
  if (colour.kind === "lab") return done(colour.lab);
  if (colour.kind === "hex") return carryOver(srgbToLab(hexToSrgb(colour.hex)), srgbReading, reading);
  const spectrum = spectrumOf(colour.wavelengthsNm, colour.reflectance);
  return spectrum.ok ? done(spectrumLab(spectrum.value, reading)) : spectrum;
}
