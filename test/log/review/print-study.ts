import { normalCdf } from "../../../src/core/maths/sampling/normal-cdf.js";
import type { Batch, Lab } from "../../../src/core/model/batch.js";
import type { FigureName } from "../../../src/core/quality/estimates/figures.js";
import { boundOf } from "./bound.js";
import { cannotTell, toldNevertheless } from "./cannot-tell.js";
import { lotNamed, median, type Studied, scores, share, study, timesWithin } from "./study.js";
import { seeded } from "./workshop.js";

/** All figures but how the dye answers to strength and temperature. */
const withoutAnswer: readonly FigureName[] = ["timeFactor", "uptakePerDm2", "dragOutMlPerDm2", "evaporation"];

const percent = (value: number | null): string => (value === null ? "-" : `${Math.round(100 * value)} %`);

/** How often the times of the next ten loads can be within 5 % at all, where these figures are not known. */
function withinAtBest(
  batch: Batch,
  seeds: readonly number[],
  loads: number,
  free?: readonly FigureName[],
): number {
  const shares = seeds.map(
    (seed) => 1 - 2 * normalCdf(-Math.log1p(0.05) / boundOf(batch, seed, loads, free)),
  );
  return shares.reduce((sum, value) => sum + value, 0) / shares.length;
}

/** The table of the study: so many workshops after each number of loads. */
export function printedStudy(
  batch: Batch,
  workshops: number,
  numbers: readonly number[] = [10, 30, 100],
): string {
  const seeds = Array.from({ length: workshops }, (_, i) => i + 1);
  const lines = [`${workshops} workshops`];
  const table = (studied: readonly Studied[]): void => {
    lines.push("figure                    within 25 %   told   held by 1.96 SE where told");
    for (const { name, within25, told, holds } of scores(studied))
      lines.push(
        `${name.padEnd(25)} ${percent(within25).padStart(11)} ${percent(told).padStart(6)}   ${percent(holds)}`,
      );
  };
  for (const loads of numbers) {
    const studied = seeds.map((seed) => study(batch, seed, loads));
    const of = (which: "missLearned" | "missAssumed") => median(studied.map((one) => one[which])).toFixed(2);
    lines.push("", `after ${loads} loads; uptake 0.03 to 0.4 mL/dm2`);
    table(studied);
    lines.push(
      `times of the next ten loads within 5 %: ${percent(timesWithin(studied, 0.05))} as asked for, ${percent(timesWithin(studied, 0.05, "dippedOff"))} as timed by hand, ${percent(timesWithin(studied, 0.05, "bestOff"))} with every figure as it fits best`,
      `the bound (Cramér-Rao): ${percent(withinAtBest(batch, seeds, loads))}, with exponent and activation energy known ${percent(withinAtBest(batch, seeds, loads, withoutAnswer))}`,
      `next ten loads miss by ${of("missLearned")} (median of means), with assumed figures by ${of("missAssumed")}`,
      `learned figures worse by over 0.1 CIEDE2000: ${percent(share(studied.map((one) => one.missLearned > one.missAssumed + 0.1)))}`,
    );
    const large = seeds.map((seed) =>
      study(batch, seed, loads, { uptakePerDm2: 0.25 * Math.exp(0.7 * seeded(seed + 31)()) }),
    );
    lines.push("", `after ${loads} loads; uptake 0.25 to 0.5 mL/dm2`);
    table(large);
    lines.push("", `after ${loads} loads of a log that cannot tell`);
    for (const { name, told, holds } of toldNevertheless(seeds.map((seed) => cannotTell(batch, seed, loads))))
      lines.push(
        `${name.padEnd(25)} rightly not told ${percent(1 - told)}; where told, held ${percent(holds)}`,
      );
  }
  const shifts: readonly Lab[] = [
    [0, 0, 0],
    [0, 0.1, 0.1],
    [0, 0, 2.6],
  ];
  for (const shift of shifts)
    lines.push(
      "",
      `a second lot moved by ${shift.join(", ")} is named: ${percent(share(seeds.map((seed) => lotNamed(batch, seed, shift))))}`,
    );
  return lines.join("\n");
}
