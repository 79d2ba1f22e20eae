import { curveGrid, wavelengthsOf } from "../../../src/core/colour/spectrum/grid.js";
import { kOverS } from "../../../src/core/colour/spectrum/kubelka-munk.js";
import { curveLab } from "../../../src/core/colour/spectrum/spectrum.js";
import type { Colour, Dye, Lab, Swatch } from "../../../src/core/model/batch.js";
import { dye as sampleDye } from "../plan/sample.js";
import { normal } from "../uptake/shade/invented-dyes.js";

// Invented dyes that do not follow the model of mixtures: they compete for the fibre's places, each goes in at a speed of
// its own through a surface film and then as a front that is deep at the face and thin below, light is scattered through
// that uneven layer, and part of it is reflected at the surface before it meets any dye. How strong each of these is in a
// short dip nobody published; the ranges are common practice, no source: bands 70 to 175 nm wide at half height, a tenth
// to a quarter of the places taken in a bath of strength 1, fronts of half to three scattering lengths in a minute, up to
// 2 % of the light reflected outside (instruments that leave gloss out), 40 to 60 % inside.

/** Strength of each dye in a bath, and the time of the dip. */
export interface MixedDip {
  readonly strengths: readonly number[];
  readonly seconds: number;
}

export interface Palette {
  readonly count: number;
  /** True reflectance at the wavelengths of a smooth curve after a dip at 80 °C. */
  readonly reflectance: (dip: MixedDip) => Float64Array;
  /** True colour. */
  readonly colour: (dip: MixedDip) => Lab;
}

const reading = { illuminant: "D65", observer: 10 } as const;
const wavelengths = wavelengthsOf(curveGrid);

/** Middles of the layers under the face, and their thickness, in lengths over which light scatters. */
const layers = [0.1, 0.15, 0.2, 0.3, 0.4, 0.6, 0.8, 1.2];
const middles = layers.map((thickness, i) => layers.slice(0, i).reduce((a, b) => a + b, 0) + thickness / 2);

/** Complementary error function (Abramowitz and Stegun 7.1.26, from memory, to 1.5e-7). */
function erfc(x: number): number {
  const t = 1 / (1 + 0.3275911 * x);
  return (
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-x * x)
  );
}

/** Reflectance of a layer over a background, scattering 1 per length (Kubelka 1948, from memory). */
function layerOver(below: number, absorption: number, thickness: number): number {
  const a = 1 + absorption;
  const b = Math.sqrt(a * a - 1);
  const coth = 1 / Math.tanh(b * thickness);
  return (1 - below * (a - b * coth)) / (a - below + b * coth);
}

/** Centres of the main bands [nm] of a yellow, an orange, a red, a violet, a blue and a green dye; each is moved by chance. */
const centres = [435, 480, 520, 565, 605, 650];

/** Ranges that invented dyes are drawn from. */
export interface World {
  /** Standard deviation of a band [nm]: 2.35 times that is its width at half height. */
  readonly bandNm: Range;
  /** Share of the light that the surface reflects before it meets any dye. */
  readonly surface: Range;
  /** Places that a dye takes in a bath of strength 1, beside those that stay free. */
  readonly affinity: Range;
  /** How far a front is in a minute, in lengths over which light scatters. */
  readonly reach: Range;
}
type Range = readonly [low: number, high: number];

export const usualWorld: World = {
  bandNm: [30, 75],
  surface: [0, 0.02],
  affinity: [0.05, 0.3],
  reach: [0.5, 3],
};

/** Each departs from the model further than the usual one in one way. */
export const harsherWorlds: Readonly<Record<string, World>> = {
  "narrow bands": { ...usualWorld, bandNm: [25, 50] },
  "3 to 5 % reflected outside": { ...usualWorld, surface: [0.03, 0.05] },
  "crowded places": { ...usualWorld, affinity: [0.2, 0.8] },
  "shallow fronts": { ...usualWorld, reach: [0.3, 1] },
};

export function palette(random: () => number, count = 4, world: World = usualWorld): Palette {
  const uniform = (low: number, high: number): number => low + (high - low) * random();
  const spread = (low: number, high: number): number => Math.exp(uniform(Math.log(low), Math.log(high)));
  const surface = { k1: uniform(...world.surface), k2: uniform(0.4, 0.6) };
  const whiteness = uniform(0.84, 0.92);
  const base = wavelengths.map((nm) => kOverS(whiteness - 0.0006 * Math.max(0, 470 - nm)));
  const chosen = centres.map((centre) => ({ centre, at: random() })).sort((x, y) => x.at - y.at);
  const dyes = chosen.slice(0, count).map(({ centre }) => {
    const bands = [
      { centre: centre + uniform(-15, 15), width: uniform(...world.bandNm), height: 1 },
      { centre: uniform(410, 660), width: uniform(...world.bandNm), height: uniform(0, 0.35) },
    ];
    const foot = uniform(0.004, 0.03);
    const height = spread(2, 12) * spread(0.4, 1);
    return {
      spectrum: wavelengths.map(
        (nm) =>
          height *
          bands.reduce(
            (sum, band) => sum + band.height * Math.exp(-0.5 * ((nm - band.centre) / band.width) ** 2),
            foot,
          ),
      ),
      /** Seconds after which the face is nearly full, and how far the front is in a minute. */
      film: spread(4, 30),
      reach: spread(...world.reach),
      affinity: spread(...world.affinity),
    };
  });
  const reflectance = ({ strengths, seconds }: MixedDip): Float64Array => {
    const crowd = dyes.reduce((sum, { affinity }, i) => sum + affinity * strengths[i]!, 1);
    const profiles = dyes.map(({ affinity, film, reach }, i) => {
      const face = ((1 + affinity) * strengths[i]! * -Math.expm1(-seconds / film)) / crowd;
      const front = reach * Math.sqrt(seconds / 60);
      return middles.map((depth) => face * erfc(depth / (2 * front)));
    });
    return Float64Array.from(base, (ks, w) => {
      let r = 1 / (1 + ks + Math.sqrt(ks * (ks + 2)));
      for (let l = layers.length - 1; l >= 0; l--) {
        let absorption = ks;
        for (let i = 0; i < dyes.length; i++) absorption += dyes[i]!.spectrum[w]! * profiles[i]![l]!;
        r = layerOver(r, absorption, layers[l]!);
      }
      return surface.k1 + ((1 - surface.k1) * (1 - surface.k2) * r) / (1 - surface.k2 * r);
    });
  };
  return { count, reflectance, colour: (dip) => curveLab(reflectance(dip), reading) };
}

/** How the owner reads a swatch: its CIELAB to 0.3 an axis, or its reflectance curve. */
export type ReadBy = "colorimeter" | "spectrophotometer";

export const readLab = (lab: Lab, noise: number, random: () => number): Lab =>
  lab.map((value) => value + noise * normal(random)) as unknown as Lab;

function readColour(curve: Float64Array, by: ReadBy, random: () => number): Colour {
  if (by === "colorimeter") return { kind: "lab", lab: readLab(curveLab(curve, reading), 0.3, random) };
  // The calibration is off by 0.5 %, each wavelength by 0.1 % of full scale: common practice, no source.
  const scale = 1 + 0.005 * normal(random);
  return {
    kind: "reflectance",
    wavelengthsNm: [...wavelengths],
    reflectance: Array.from(curve, (r) => Math.min(1, Math.max(0.001, r * scale + 0.001 * normal(random)))),
  };
}

const swatchSeconds = [15, 30, 60, 180];

/** The dyes of a palette as their owner writes them down: the bare part and four swatches of each. */
export function asWritten(truth: Palette, by: ReadBy, random: () => number): readonly Dye[] {
  const none = Array.from({ length: truth.count }, () => 0);
  const bare = readColour(truth.reflectance({ strengths: none, seconds: 60 }), by, random);
  const { ratePerSecond: _, ...rest } = sampleDye;
  return none.map((_, i) => ({
    ...rest,
    name: `dye ${i + 1}`,
    law: "auto",
    base: { name: "white" },
    swatches: [
      { seconds: 0, colour: bare },
      ...swatchSeconds.map(
        (seconds): Swatch => ({
          seconds,
          colour: readColour(truth.reflectance({ strengths: none.with(i, 1), seconds }), by, random),
        }),
      ),
    ],
  }));
}
