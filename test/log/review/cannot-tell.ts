import type { Batch } from "../../../src/core/model/batch.js";
import type { Learnable } from "../../../src/core/quality/estimates/figures.js";
import { learn, type Score, type Studied, scores } from "./study.js";
import { drawnTruth, seeded, work } from "./workshop.js";

/** Figures that the log of `cannotTell` has nothing to tell of. */
export const notToBeTold = [
  "uptakePerDm2",
  "dragOutMlPerDm2",
  "strengthExponent",
  "activationEnergyJPerMol",
] as const satisfies readonly Learnable[];

/**
 * What the tool tells of a log that cannot tell: an uptake near 0.03 mL/dm2 goes under in what is carried out, the bath
 * keeps its temperature, and no water is written down.
 */
export function cannotTell(batch: Batch, seed: number, loads: number): Pick<Studied, "truth" | "learned"> {
  const random = seeded(seed);
  const truth = { ...drawnTruth(random, batch), uptakePerDm2: 0.02 * Math.exp(0.8 * random()) };
  const { rows } = work(batch, truth, random, { loads, steady: true, withoutWater: true });
  return { truth, learned: learn(batch, rows) };
}

/** How often each of those figures is told over some such logs, and the told ones hold the truth. */
export const toldNevertheless = (logs: readonly Pick<Studied, "truth" | "learned">[]): Score[] =>
  scores(logs).filter(({ name }) => notToBeTold.some((one) => one === name));
