import { spectrumOf } from "../../colour/resolve-colour.js";
import { hexToSrgb } from "../../colour/screen/css-colour.js";
import { srgbReading, srgbToLab } from "../../colour/screen/srgb.js";
import { curveGrid } from "../../colour/spectrum/grid.js";
import { kOverS } from "../../colour/spectrum/kubelka-munk.js";
import { smoothReflectance } from "../../colour/spectrum/smooth-reflectance.js";
import { curveLab, spectrumLab } from "../../colour/spectrum/spectrum.js";
import { toTableGrid } from "../../colour/spectrum/spline.js";
import { done, error, type Fault, failed, isError, type Outcome, warning } from "../../fault.js";
import type { Colour, Dye, Lab, Swatch } from "../../model/batch.js";
import type { Reading } from "../../model/colour.js";

/** A colour as the shade model needs it: what it reads, and K/S at the 36 wavelengths of a smooth curve. */
export interface DyedColour {
  readonly lab: Lab;
  readonly ks: Float64Array;
}

/** A swatch as the shade model needs it. */
export interface DyedSwatch extends DyedColour {
  readonly seconds: number;
}

/** A dye's swatches by time, and what they were dyed on. */
export interface SwatchSet {
  readonly reading: Reading;
  readonly base: DyedColour;
  readonly swatches: readonly DyedSwatch[];
}

// Below this no instrument tells black from black, and K/S runs away.
const darkest = 1e-4;
const absorbing = (curve: ArrayLike<number>): Float64Array =>
  Float64Array.from(curve, (r) => kOverS(Math.min(1, Math.max(darkest, r))));

/** Samples of a 5 nm curve that stand on the grid of a smooth one. */
const toCurveGrid = (table: Float64Array): Float64Array =>
  Float64Array.from({ length: curveGrid.count }, (_, i) => table[2 * i]!);

/**
 * A colour with its K/S: from its measured reflectance, else from the smoothest curve that reproduces it. A hex
 * colour (sRGB, D65/2) is carried to the reading through that curve.
 */
export function dyedColour(colour: Colour, reading: Reading, path: Fault["path"]): Outcome<DyedColour> {
  const at = (outcome: Outcome<Float64Array>): Outcome<Float64Array> =>
    outcome.ok ? outcome : failed(...outcome.faults.map((fault) => ({ ...fault, path })));
  switch (colour.kind) {
    case "lab": {
      const curve = at(smoothReflectance(colour.lab, reading));
      return curve.ok ? done({ lab: colour.lab, ks: absorbing(curve.value) }) : curve;
    }
    case "hex": {
      const curve = at(smoothReflectance(srgbToLab(hexToSrgb(colour.hex)), srgbReading));
      return curve.ok ? done({ lab: curveLab(curve.value, reading), ks: absorbing(curve.value) }) : curve;
    }
    case "reflectance": {
      const spectrum = spectrumOf(colour.wavelengthsNm, colour.reflectance);
      if (!spectrum.ok) return failed(...spectrum.faults.map((fault) => ({ ...fault, path })));
      const { firstNm, stepNm, reflectance } = spectrum.value;
      const table = toTableGrid(reflectance, firstNm, stepNm);
      return done({
        lab: spectrumLab(spectrum.value, reading),
        ks: absorbing(toCurveGrid(table)),
      });
    }
  }
}

const same = (a: Lab, b: Lab): boolean => a.every((value, i) => Math.abs(value - b[i]!) < 1e-9);

/** Warns where a swatch that was dipped for longer is the paler one: it is closer to the base in K/S. */
function orderWarnings(dye: Dye, base: DyedColour, swatches: readonly DyedSwatch[]): Fault[] {
  const strength = ({ ks }: DyedColour): number => ks.reduce((sum, value, i) => sum + value - base.ks[i]!, 0);
  return swatches.slice(1).flatMap((swatch, i) => {
    const before = swatches[i]!;
    if (strength(swatch) >= strength(before)) return [];
    return [
      warning(
        "swatch-order",
        ["dyes", dye.name, "swatches"],
        `dye "${dye.name}": the swatch of ${swatch.seconds} s is paler than that of ${before.seconds} s`,
        "read both again, or see whether their times were mixed up",
      ),
    ];
  });
}

/** The swatches of a dye, ready for the model; faults where they cannot say how colour grows with time. */
export function swatchSet(dye: Dye): Outcome<SwatchSet> {
  const path = ["dyes", dye.name];
  const { base, reading } = dye;
  if (!base?.lab)
    return failed(
      error(
        "no-swatch-base",
        [...path, "base"],
        `dye "${dye.name}" has swatches, and what they were dyed on is not known`,
        "write base: white, and under bases: white: { lab: [92.1, -0.6, -2.3] } as read",
      ),
    );
  const faults: Fault[] = [];
  const started = dyedColour({ kind: "lab", lab: base.lab }, reading, ["bases", base.name, "lab"]);
  faults.push(...started.faults);
  const swatches = dye.swatches.flatMap((swatch: Swatch, i) => {
    const dyed = dyedColour(swatch.colour, reading, [...path, "swatches", i]);
    faults.push(...dyed.faults);
    return dyed.ok ? [{ ...dyed.value, seconds: swatch.seconds }] : [];
  });
  if (!started.ok || faults.some(isError)) return failed(...faults);
  swatches.sort((a, b) => a.seconds - b.seconds);
  if (swatches.every((swatch) => same(swatch.lab, started.value.lab)))
    return failed(
      error(
        "swatches-like-base",
        [...path, "swatches"],
        `the swatches of dye "${dye.name}" have the colour of their base: nothing was dyed`,
        "read the swatches again",
      ),
    );
  if (swatches.length > 1 && swatches.every((swatch) => same(swatch.lab, swatches[0]!.lab)))
    return failed(
      error(
        "swatches-alike",
        [...path, "swatches"],
        `the swatches of dye "${dye.name}" all have one colour: they do not say how it grows with time`,
        "dip swatches for shorter times, or keep only one",
      ),
    );
  faults.push(...orderWarnings(dye, started.value, swatches));
  return done({ reading, base: started.value, swatches }, faults);
}
