import { done, type Outcome } from "../fault.js";
import { type Colour, type Lab, type Lch, type Reading, sameReading, type Xyz } from "../model/colour.js";
import { type Chromaticity, chromaticity } from "./chromaticity.js";
import { labToLch, labToXyz, xyzToLab } from "./cielab.js";
import { type Luv, xyzToLuv } from "./cieluv.js";
import { resolveLab, spectrumOf } from "./resolve-colour.js";
import { type ScreenColour, screenColour } from "./screen/screen-swatch.js";
import { inGamut, labToSrgb, srgbReading, srgbToHex, srgbWhite } from "./screen/srgb.js";
import { type Spectrum, spectrumLab, spectrumXyz } from "./spectrum/spectrum.js";
import { tableWeights } from "./spectrum/weights.js";
import { cieWhiteness, yellowness } from "./whiteness.js";

/** What `colour` reports of one colour. Whiteness, tint and yellowness are null where they are not defined. */
export interface ColourReport {
  readonly reading: Reading;
  readonly xyz: Xyz;
  readonly chromaticity: Chromaticity | null;
  readonly lab: Lab;
  readonly lch: Lch;
  readonly luv: Luv;
  readonly hex: string;
  readonly inGamut: boolean;
  readonly whiteness: number | null;
  readonly tint: number | null;
  /** False where whiteness and tint lie outside the limits of their formula. */
  readonly whitenessValid: boolean;
  readonly yellowness: number | null;
}

function reportOf(xyz: Xyz, white: Xyz, reading: Reading, screen: ScreenColour): Outcome<ColourReport> {
  const lab = xyzToLab(xyz, white);
  const index = cieWhiteness(xyz, reading);
  return done(
    {
      reading,
      xyz,
      chromaticity: chromaticity(xyz) ?? null,
      lab,
      lch: labToLch(lab),
      luv: xyzToLuv(xyz, white),
      hex: screen.hex,
      inGamut: screen.inGamut,
      whiteness: index?.whiteness ?? null,
      tint: index?.tint ?? null,
      whitenessValid: index?.valid ?? false,
      yellowness: yellowness(xyz, reading) ?? null,
    },
    screen.faults,
  );
}

/** The report of a reflectance curve; its screen colour is computed from the curve, not carried over. */
export function spectrumReport(spectrum: Spectrum, reading: Reading): Outcome<ColourReport> {
  const srgb = labToSrgb(spectrumLab(spectrum, srgbReading));
  return reportOf(spectrumXyz(spectrum, reading), tableWeights(reading).white, reading, {
    hex: srgbToHex(srgb),
    inGamut: inGamut(srgb),
    faults: [],
  });
}

/**
 * The report of a colour as it was given, under a reading. X, Y, Z of a hex under its own reading are those of
 * sRGB, with the white of sRGB; all others belong to the white of the 5 nm sum.
 */
export function colourReport(colour: Colour, reading: Reading): Outcome<ColourReport> {
  if (colour.kind === "reflectance") {
    const spectrum = spectrumOf(colour.wavelengthsNm, colour.reflectance);
    return spectrum.ok ? spectrumReport(spectrum.value, reading) : spectrum;
  }
  const lab = resolveLab(colour, reading);
  if (!lab.ok) return lab;
  const hex = colour.kind === "hex" ? colour.hex : undefined;
  const screen = hex === undefined ? screenColour(lab.value, reading) : { hex, inGamut: true, faults: [] };
  const white =
    hex !== undefined && sameReading(reading, srgbReading) ? srgbWhite : tableWeights(reading).white;
  return reportOf(labToXyz(lab.value, white), white, reading, screen);
}
