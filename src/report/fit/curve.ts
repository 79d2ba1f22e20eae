import { lawUptake } from "../../core/uptake/law/laws.js";
import type { Plot, PlotPoint } from "../plot/plot.js";
import { type FitFacts, readingsSaid } from "./facts.js";

const steps = 120;

/** Readings and the law's curve, closer points where it rises. */
export function curvePlot(facts: FitFacts): Plot {
  const { table, fits } = facts;
  const { points, timeColumn, timeUnit, uptakeColumn } = table;
  const { plateau, rate } = fits.parameters!;
  const longest = points.reduce((most, { seconds }) => Math.max(most, seconds), 0) * 1.04;
  const label = readingsSaid(facts);
  const curve = Array.from({ length: steps + 1 }, (_, i): PlotPoint => {
    const seconds = longest * (i / steps) ** 2;
    return [seconds / timeUnit.seconds, plateau * lawUptake(fits.law, rate * seconds)];
  });
  return {
    title: `${label} over time, ${fits.law} law`,
    description: `${points.length} readings of ${uptakeColumn} over ${timeColumn} and the ${fits.law} curve fitted to them`,
    x: { label: "time", unit: timeUnit.name, from: 0 },
    y: { label, unit: "", from: 0 },
    series: [
      { name: `${fits.law} law`, kind: "line", points: curve },
      {
        name: "readings",
        kind: "dots",
        points: points.map(({ seconds, uptake }) => [seconds / timeUnit.seconds, uptake]),
      },
    ],
  };
}
