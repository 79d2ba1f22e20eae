import type { Assumption } from "../../model/assumption.js";
import { assumedAnswers } from "./answers.js";
import type { AssumedWork } from "./assumed-work.js";
import { assumedUptakes, dyeFigures, ratesAndLaws } from "./dyes.js";
import { assumedDragOut, assumedTimes, uncountedTimes } from "./handling.js";
import { assumedLoadSizes, assumedMasses, secondDips } from "./parts.js";
import { assumedMixtures, estimatedBases } from "./shades.js";
import { assumedSurfaces, unknownHeaters } from "./tanks.js";

/** What may be assumed, subject by subject, in the order of reports. */
const subjects: readonly ((work: AssumedWork) => Assumption[])[] = [
  assumedUptakes,
  dyeFigures,
  ratesAndLaws,
  assumedAnswers,
  assumedMixtures,
  estimatedBases,
  assumedMasses,
  assumedDragOut,
  assumedTimes,
  uncountedTimes,
  assumedLoadSizes,
  unknownHeaters,
  assumedSurfaces,
  secondDips,
];

/** The figures that the results rest on and that nobody measured here, each once. */
export function assumptionsOf(work: AssumedWork): Assumption[] {
  const found = new Map<string, Assumption>();
  for (const subject of subjects)
    for (const one of subject(work)) if (!found.has(one.message)) found.set(one.message, one);
  return [...found.values()];
}
