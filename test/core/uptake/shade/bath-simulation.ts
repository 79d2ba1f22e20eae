import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Dye, Handling, Lab, Swatch } from "../../../../src/core/model/batch.js";
import { dipSeconds } from "../../../../src/core/uptake/law/dip-time.js";
import { type DyeModel, dyeModel } from "../../../../src/core/uptake/shade/dye-model.js";
import { nearestTime } from "../../../../src/core/uptake/shade/find-time.js";
import { doubtCurves } from "../../../../src/core/uptake/shade/fresh-doubt.js";
import { timeDoubt } from "../../../../src/core/uptake/shade/time-doubt.js";
import { withTrial } from "../../../../src/core/uptake/shade/trial.js";
import type { ChosenCurve } from "../../../../src/core/uptake/swatches/choose-law.js";
import { handling, dye as sampleDye } from "../../plan/sample.js";
import { normal, seeded } from "./invented-dyes.js";
import { type LayerDye, layerDye } from "./layer-dyes.js";

/** Baths that a dip is asked for in. */
export const simulatedBaths = {
  fresh: { strength: 1, celsius: 80 },
  "115 %": { strength: 1.15, celsius: 80 },
  "85 %": { strength: 0.85, celsius: 80 },
  "70 %": { strength: 0.7, celsius: 80 },
  "50 %": { strength: 0.5, celsius: 80 },
  "+3 °C": { strength: 1, celsius: 83 },
  "-3 °C": { strength: 1, celsius: 77 },
} as const;
export type BathName = keyof typeof simulatedBaths;

/** Baths whose intervals are looked at, which takes most of the time. */
const doubted: readonly BathName[] = ["fresh", "70 %", "50 %"];

export interface Outcome {
  /** CIEDE2000 over the best that the dye can give in that bath, sorted. */
  readonly excess: readonly number[];
  /** Share of cases whose best time lies in the stated interval; null where that was not looked at. */
  readonly held: number | null;
  /** Cases without a time though the dye reaches the colour within the longest dip. */
  readonly refused: number;
}

/** What the owner does beyond four swatches in a fresh bath. */
export type Practice =
  | "swatches only"
  | "half-strength swatch"
  | "trial of another shade"
  | "trial of the shade";

const readAs = (lab: Lab, noise: number, random: () => number): Lab =>
  lab.map((value) => value + noise * normal(random)) as unknown as Lab;

const timedAs = (seconds: number, timing: Handling["timingSeconds"], random: () => number): number =>
  timing === 0 ? seconds : Math.max(1, seconds + (timing / 1.96) * normal(random));

/** The dye as its owner writes it down: read to 0.3 an axis and timed to ± 2 s. */
function written(truth: LayerDye, apart: readonly Swatch[], timing: number, random: () => number): Dye {
  const { ratePerSecond: _, ...rest } = sampleDye;
  const swatches = [15, 30, 60, 180].map((seconds): Swatch => {
    const real = timedAs(seconds, timing, random);
    const lab = readAs(truth.colour({ seconds: real, strength: 1, celsius: 80 }), 0.3, random);
    return { seconds, colour: { kind: "lab", lab } };
  });
  return {
    ...rest,
    activationEnergyAssumed: true,
    law: "auto",
    base: { name: "white", lab: readAs(truth.baseLab, 0.3, random) },
    swatches: [...swatches, ...apart],
  };
}

function halfSwatch(truth: LayerDye, timing: number, random: () => number): Swatch {
  const real = timedAs(60, timing, random);
  const lab = readAs(truth.colour({ seconds: real, strength: 0.5, celsius: 80 }), 0.3, random);
  return { seconds: 60, strength: 0.5, colour: { kind: "lab", lab } };
}

/** Finds the time whose true colour is nearest to a target in a bath, and how near. */
function bestOf(truth: LayerDye) {
  const colours = new Map<BathName, readonly { readonly seconds: number; readonly lab: Lab }[]>();
  return (target: Lab, name: BathName) => {
    const known =
      colours.get(name) ??
      times.map((seconds) => ({ seconds, lab: truth.colour({ seconds, ...simulatedBaths[name] }) }));
    colours.set(name, known);
    let least = { seconds: 0, deltaE00: Number.POSITIVE_INFINITY };
    for (const { seconds, lab } of known) {
      const deltaE00 = ciede2000(lab, target);
      if (deltaE00 < least.deltaE00) least = { seconds, deltaE00 };
    }
    return least;
  };
}

/** Up to the longest that a layer dye is followed for, two hundredths apart. */
const times: number[] = [];
for (let seconds = 2; seconds < 890; seconds *= 1.02) times.push(seconds);

/** Colours that are asked for of each dye. */
const targets = 2;

/** Times for colours of invented layer dyes in fresh and other baths, against the best that each dye can give. */
export function simulateBaths(
  options: {
    readonly dyes: number;
    readonly seed: number;
    /** Dips are timed as exactly as `handling.timing` says; else to the tick. */
    readonly timed: boolean;
    readonly changeOver: readonly [number, number];
    readonly baths?: readonly BathName[];
  },
  practice: Practice,
): Record<BathName, Outcome> {
  const random = seeded(options.seed);
  const timing = options.timed ? handling.timingSeconds : 0;
  const excess = new Map<BathName, number[]>();
  const held = new Map<BathName, number>();
  const refused = new Map<BathName, number>();
  let cases = 0;
  const names = options.baths ?? (Object.keys(simulatedBaths) as BathName[]);
  for (let i = 0; i < options.dyes; i++) {
    const truth = layerDye(random, options.changeOver);
    const apart = practice === "half-strength swatch" ? [halfSwatch(truth, timing, random)] : [];
    const read = dyeModel(written(truth, apart, timing, random), handling);
    if (!read.ok || read.value.chosen === null) continue;
    const model = read.value as DyeModel & { readonly chosen: ChosenCurve };
    const { curve } = model.chosen;
    const { timingSeconds } = handling;
    const curves = doubtCurves(model.chosen, { timingSeconds });
    const best = bestOf(truth);
    for (let j = 0; j < targets; j++) {
      const target = truth.colour({ seconds: 15 * 10 ** random(), strength: 1, celsius: 80 });
      const otherSeconds = 15 * 10 ** random();
      const fresh = nearestTime(curve, target, 0, undefined, 300).seconds;
      cases++;
      for (const name of names) {
        const bath = simulatedBaths[name];
        let trial: Parameters<typeof withTrial>[1] | undefined;
        if (practice.startsWith("trial")) {
          const seconds =
            practice === "trial of the shade" ? dipSeconds(model.uptake, fresh, bath) : otherSeconds;
          const real = timedAs(seconds, timing, random);
          trial = { seconds, lab: readAs(truth.colour({ seconds: real, ...bath }), 0.3, random) };
        }
        const tried = trial === undefined ? undefined : withTrial(model, trial, bath);
        const uptake = tried?.uptake ?? model.uptake;
        const seconds = dipSeconds(uptake, fresh, bath);
        const can = best(target, name);
        if (!Number.isFinite(seconds)) refused.set(name, (refused.get(name) ?? 0) + 1);
        excess.set(name, [
          ...(excess.get(name) ?? []),
          ciede2000(truth.colour({ seconds, ...bath }), target) - can.deltaE00,
        ]);
        if (!doubted.includes(name)) continue;
        const { factors95 } = timeDoubt(model, target, fresh, bath, {
          timingSeconds,
          trial: tried?.trial,
          curves,
        });
        const [low, high] = factors95.map((factor) => factor * seconds) as [number, number];
        // The grid of times is two hundredths apart.
        if (low <= can.seconds * 1.01 && can.seconds <= high * 1.01)
          held.set(name, (held.get(name) ?? 0) + 1);
      }
    }
  }
  return Object.fromEntries(
    names.map((name) => [
      name,
      {
        excess: excess.get(name)!.sort((a, b) => a - b),
        held: doubted.includes(name) ? (held.get(name) ?? 0) / cases : null,
        refused: refused.get(name) ?? 0,
      },
    ]),
  ) as unknown as Record<BathName, Outcome>;
}
