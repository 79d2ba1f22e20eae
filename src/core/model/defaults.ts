import type { Cover, Insulation, TopUpRule } from "./batch.js";
import type { Reading } from "./colour.js";

/** The reading of colours for which none is given. */
export const standardReading: Reading = { illuminant: "D65", observer: 10 };

/** A figure that is assumed where none is given; its 95 % range goes from `value / factor` to `value * factor`. */
export interface AssumedFigure {
  readonly value: number;
  readonly factor: number;
}

/**
 * What holds where a batch file gives nothing: schema, reader, core and reports take it from here. Common practice,
 * no source, but for the activation energy, whose published range is 45 to 117 kJ/mol.
 */
export const defaults = {
  room: { celsius: 20, humidity: 0.5 },
  tank: {
    /** Volume to the brim, of the working volume. */
    capacityPercent: 115,
    insulation: "none" as Insulation,
    cover: "none" as Cover,
    heaterEfficiency: 0.9,
    agitationW: 0,
  },
  dryer: { duty: 1 },
  dye: {
    law: "auto" as const,
    timeFactor: 1,
    /** The range is as wide as the published one, by ratio. */
    activationEnergyJPerMol: { value: 75_000, factor: Math.sqrt(117 / 45) } as AssumedFigure,
    uptakeMlPerDm2: { value: 0.03, factor: 4 } as AssumedFigure,
    /** Of a powder: what so much fresh liquor holds. */
    powderUptakeLiquorMlPerDm2: 0.3,
  },
  swatch: { strength: 1 },
  evidence: { depth: 1, usedShare: 1, evaporatedL: 0, refilled: "none" as const, weighedParts: 1 },
  part: { meshUnit: "mm" as const, densityGPerCm3: 0.93, heatCapacityKjPerKgK: 1.7 },
  blank: { finishing: 0 },
  shade: { tolerance: 1.5 },
  bath: { topUp: "none" as TopUpRule, after: "keep" as const },
  keptBath: { strength: 1, ageDays: 0, areaDm2: 0 },
  handling: {
    loadSeconds: 15,
    loadPartSeconds: 2,
    drainSeconds: 15,
    rinseSeconds: 30,
    rinses: 1,
    rinseWaterL: 2,
    rinseEvery: 1,
    unloadSeconds: 10,
    unloadPartSeconds: 1,
    belowKelvin: 1,
    coolToCelsius: 45,
    dryerLoadingMinutes: 3,
    setUpMinutes: 15,
    cleanUpMinutes: 15,
    timingSeconds: 2,
    shortestSeconds: 15,
    longestSeconds: 300,
    dragOutMlPerDm2: { value: 0.8, factor: 3 } as AssumedFigure,
    liquorRatioLPerKg: 20,
    freeboard: 0.05,
    /** Of the times per load and per part, and of the liquor ratio, as in `AssumedFigure`. */
    assumedFactor: 2,
  },
  consumables: { perBath: 0, perLoad: 0, perPart: 0 },
  yield: 1,
  rework: 0,
  pricing: { overhead: 0, fees: 0, margin: 0, tax: 0 },
};

/**
 * Volume to the brim of a tank for which none is given [L].
 * @example usualCapacityL(6) // => 6.9
 */
export const usualCapacityL = (volumeL: number): number => (defaults.tank.capacityPercent * volumeL) / 100;
