import { curveGrid, wavelengthsOf } from "../../../../src/core/colour/spectrum/grid.js";
import { kOverS, reflectanceOf } from "../../../../src/core/colour/spectrum/kubelka-munk.js";
import { curveLab } from "../../../../src/core/colour/spectrum/spectrum.js";
import type { Dye, Lab, LawName } from "../../../../src/core/model/batch.js";
import { rateFactor } from "../../../../src/core/uptake/law/arrhenius.js";
import { lawNames, lawUptake } from "../../../../src/core/uptake/law/laws.js";
import { dye } from "../../plan/sample.js";

/** A generator of numbers in 0..1 from a seed (mulberry32), so that every run sees the same dyes. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A standard normal number. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const reading = { illuminant: "D65", observer: 10 } as const;
const wavelengths = wavelengthsOf(curveGrid);

/** An invented dye whose colour after any dip is known: one or two absorption bands over a white base. */
export interface InventedDye {
  readonly law: LawName;
  readonly rate: number;
  /** True colour after a dip. */
  readonly colour: (dip: { seconds: number; strength: number; celsius: number }) => Lab;
  readonly baseLab: Lab;
}

export function inventedDye(random: () => number, saturation?: number): InventedDye {
  const between = (low: number, high: number): number => low + (high - low) * random();
  const law = lawNames[Math.floor(random() * lawNames.length)]!;
  const rate = Math.exp(between(Math.log(0.004), Math.log(0.03)));
  const bands = Array.from({ length: random() < 0.5 ? 1 : 2 }, () => ({
    centre: between(420, 640),
    width: between(25, 60),
    height: Math.exp(between(Math.log(1.5), Math.log(14))),
  }));
  const foot = between(0.005, 0.05);
  const tint = between(0.0005, 0.004);
  const base = wavelengths.map((nm) => kOverS(0.86 - tint * Math.max(0, 470 - nm) * 0.5));
  const absorption = wavelengths.map((nm) =>
    bands.reduce(
      (sum, { centre, width, height }) => sum + height * Math.exp(-0.5 * ((nm - centre) / width) ** 2),
      foot,
    ),
  );
  const lab = (depth: number): Lab =>
    curveLab(
      base.map((ks, i) => reflectanceOf(ks + absorption[i]! * depth)),
      reading,
    );
  return {
    law,
    rate,
    baseLab: lab(0),
    colour: ({ seconds, strength, celsius }) => {
      const hot = rate * rateFactor({ celsius, referenceCelsius: 80, activationEnergyJPerMol: 75_000 });
      const isotherm =
        saturation === undefined ? strength : (strength * (1 + saturation)) / (strength + saturation);
      return lab((isotherm * lawUptake(law, hot * seconds)) / lawUptake(law, rate * 180));
    },
  };
}

export const swatchSeconds = [10, 30, 60, 180];

/** The invented dye as its owner would write it down: four swatches, read with that much noise per axis. */
export function asRead(invented: InventedDye, noise: number, random: () => number): Dye {
  const read = (lab: Lab): Lab => lab.map((value) => value + noise * normal(random)) as unknown as Lab;
  const { ratePerSecond: _, ...rest } = dye;
  return {
    ...rest,
    law: "auto",
    base: { name: "white", lab: read(invented.baseLab) },
    swatches: swatchSeconds.map((seconds) => ({
      seconds,
      colour: { kind: "lab", lab: read(invented.colour({ seconds, strength: 1, celsius: 80 })) },
    })),
  };
}
