import type { BathWear } from "../../core/plan/wear-model.js";
import type { Plot } from "../plot/plot.js";

/**
 * A life as a drawing: strength and dip times over its loads, both as shares of the fresh bath's, so that dips of all
 * shades lie on one scale. Null where the bath lasts for no load.
 */
export function lifePlot({ dye, tank, topUpRule, trace, portions }: BathWear): Plot | null {
  const last = trace.at(-1);
  if (last === undefined) return null;
  const dips = trace.flatMap(({ load, portion, dipSeconds }) => {
    const { freshDipSeconds } = portions[portion - 1]!;
    return freshDipSeconds > 0 ? [[load, (100 * dipSeconds) / freshDipSeconds] as const] : [];
  });
  return {
    title: `${dye} in tank ${tank}, topUp: ${topUpRule}, load by load`,
    description: `Strength of a fresh bath of ${dye} and the times of its dips over ${last.load} loads: ${Math.round(100 * last.strength)} % strength before the last one.`,
    x: { label: "load", unit: "", from: 1 },
    y: { label: "of a fresh bath", unit: "%", from: 0 },
    series: [
      { name: "strength", kind: "line", points: trace.map(({ load, strength }) => [load, 100 * strength]) },
      { name: "dip time", kind: "dots", points: dips },
    ],
  };
}
