import { append } from "../../append.js";
import { ciede2000 } from "../../colour/difference/ciede2000.js";
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
import { measuredCelsius } from "../law/measured-at.js";

/** A colour as the shade model needs it: what it reads, and K/S at the 36 wavelengths of a smooth curve. */
export interface DyedColour {
  readonly lab: Lab;
  readonly ks: Float64Array;
}

/** A swatch as the shade model needs it. */
export interface DyedSwatch extends DyedColour {
  readonly seconds: number;
}

/** A swatch from another bath than the fresh one: strength [-], temperature [°C]. */
export interface ApartSwatch extends DyedSwatch {
  readonly strength: number;
  readonly celsius: number;
}

/** A dye's swatches by time, and what they were dyed on. */
export interface SwatchSet {
  readonly reading: Reading;
  readonly base: DyedColour;
  /** From a fresh bath, by time. */
  readonly swatches: readonly DyedSwatch[];
  /** From other baths: they tell how the dye answers to those, and do not shape the curve. */
  readonly apart: readonly ApartSwatch[];
}

// Below this no instrument tells black from black, and K/S runs away.
const darkest = 1e-4;
const absorbing = (curve: ArrayLike<number>): Float64Array =>
  Float64Array.from(curve, (r) => kOverS(Math.min(1, Math.max(darkest, r))));

/** Samples of a 5 nm curve on the grid of a smooth one. */
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

/** Least difference between the swatches' base and the base as it is now that gives a warning [CIEDE2000]. */
const baseMovedFrom = 0.5;

/** Warns where the base is no longer the one that the swatches were dyed on. */
function baseWarnings(dye: Dye, now: Lab, then: Lab): Fault[] {
  const moved = ciede2000(now, then);
  if (moved < baseMovedFrom) return [];
  return [
    warning(
      "base-moved",
      ["dyes", dye.name, "swatches"],
      `the swatches of dye "${dye.name}" were dyed on a base that is ${moved.toFixed(1)} CIEDE2000 from base "${dye.base!.name}" as it is now: colours on it are estimates`,
      "dipwright shade says how far each colour moves and what time brings it back",
    ),
  ];
}

/** Swatches that differ by less look alike, and two readings of one swatch may differ by as much [CIEDE2000]. */
const lookAlike = 1;

/** Warns where a swatch that was dipped for longer is the paler one, as the eye sees it: it is closer to the base in K/S. */
function orderWarnings(dye: Dye, base: DyedColour, swatches: readonly DyedSwatch[]): Fault[] {
  const strength = ({ ks }: DyedColour): number => ks.reduce((sum, value, i) => sum + value - base.ks[i]!, 0);
  return swatches.slice(1).flatMap((swatch, i) => {
    const before = swatches[i]!;
    if (strength(swatch) >= strength(before) || ciede2000(swatch.lab, before.lab) < lookAlike) return [];
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
  const bare = dye.swatches.find(({ seconds }) => seconds === 0);
  const baseColour: Colour | undefined = bare?.colour ?? (base?.lab && { kind: "lab", lab: base.lab });
  if (baseColour === undefined)
    return failed(
      error(
        "no-swatch-base",
        [...path, "base"],
        `dye "${dye.name}" has swatches, and what they were dyed on is not known`,
        "add the bare part as a swatch: - { time: 0 s, lab: [92.1, -0.6, -2.3] }; or write base: white, and under bases: white: { lab: ... }",
      ),
    );
  const faults: Fault[] = [];
  const started = dyedColour(
    baseColour,
    reading,
    bare || !base ? [...path, "swatches"] : ["bases", base.name, "lab"],
  );
  faults.push(...started.faults);
  const dyed = dye.swatches.flatMap((swatch, i) => {
    if (swatch.seconds === 0) return [];
    const read = dyedColour(swatch.colour, reading, [...path, "swatches", i]);
    faults.push(...read.faults);
    return read.ok ? [{ ...read.value, swatch }] : [];
  });
  if (!started.ok || faults.some(isError)) return { ok: false, faults };
  if (bare && base?.lab) faults.push(...baseWarnings(dye, base.lab, started.value.lab));
  const own = measuredCelsius(dye);
  const isApart = ({ strength = 1, celsius = own }: Swatch): boolean => strength !== 1 || celsius !== own;
  const swatches = dyed
    .filter(({ swatch }) => !isApart(swatch))
    .map(({ lab, ks, swatch }) => ({ lab, ks, seconds: swatch.seconds }))
    .sort((a, b) => a.seconds - b.seconds);
  const apart = dyed
    .filter(({ swatch }) => isApart(swatch))
    .map(({ lab, ks, swatch: { seconds, strength, celsius } }) => ({
      lab,
      ks,
      seconds,
      strength: strength ?? 1,
      celsius: celsius ?? own,
    }));
  if (swatches.length === 0)
    return failed(
      error(
        "no-fresh-swatch",
        [...path, "swatches"],
        `dye "${dye.name}" has no swatch from a fresh bath at its own temperature: only such swatches shape its colours`,
        "add one without strength and temperature: - { time: 60 s, lab: [65.9, 44.6, 23.0] }",
      ),
    );
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
  append(faults, orderWarnings(dye, started.value, swatches));
  return done({ reading, base: started.value, swatches, apart }, faults);
}
