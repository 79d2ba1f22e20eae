import { curveGrid, wavelengthsOf } from "../../../src/core/colour/spectrum/grid.js";
import { kOverS, reflectanceOf } from "../../../src/core/colour/spectrum/kubelka-munk.js";
import { curveLab } from "../../../src/core/colour/spectrum/spectrum.js";
import { mixedKs } from "../../../src/core/recipe/mixture/mixed-ks.js";
import type { MixedDip, Palette } from "./competing-dyes.js";

const wavelengths = wavelengthsOf(curveGrid);
const reading = { illuminant: "D65", observer: 10 } as const;

/** Dyes that follow the model of mixtures to the letter: what it says of itself is no evidence, only a floor. */
export function ownModelPalette(random: () => number): Palette {
  const uniform = (low: number, high: number): number => low + (high - low) * random();
  const base = wavelengths.map((nm) => kOverS(0.88 - 0.0006 * Math.max(0, 470 - nm)));
  const dyes = [440, 500, 550, 620].map((centre) => {
    const [at, width, height] = [centre + uniform(-15, 15), uniform(25, 75), uniform(2, 8)];
    return {
      absorption: wavelengths.map((nm) => height * (0.01 + Math.exp(-0.5 * ((nm - at) / width) ** 2))),
      rate: uniform(0.008, 0.03),
    };
  });
  const reflectance = ({ strengths, seconds }: MixedDip): Float64Array =>
    mixedKs(
      base,
      dyes.map(({ absorption }) => absorption),
      dyes.map(({ rate }, i) => (strengths[i]! * Math.expm1(-rate * seconds)) / Math.expm1(-rate * 180)),
    ).map(reflectanceOf);
  return { count: dyes.length, reflectance, colour: (dip) => curveLab(reflectance(dip), reading) };
}
