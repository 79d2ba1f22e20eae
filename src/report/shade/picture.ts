import type { ShadeDescription } from "../../core/uptake/shade/describe-shade.js";
import type { Plot, PlotSeries } from "../plot/plot.js";
import { degrees, percent } from "../words/amounts.js";

const axes = ["L*", "a*", "b*"] as const;

/** A shade curve as a drawing: CIELAB over time with the swatches as dots, the colours beneath, the window marked. */
export function shadePicture(shade: ShadeDescription): Plot {
  const { drawn, target } = shade;
  const window = target?.windowSeconds;
  const last = drawn.at(-1)?.seconds ?? 0;
  // Swatches belong to a fresh bath at the dye's own temperature; in any other they would lie off the curve.
  const own = shade.strength === 1 && !shade.estimated && shade.ownTemperature;
  const series = axes.flatMap((name, axis): PlotSeries[] => [
    { name, kind: "line", points: drawn.map(({ seconds, lab }) => [seconds, lab[axis]!]) },
    ...(own
      ? [
          {
            name: `${name} of swatches`,
            kind: "dots" as const,
            points: shade.swatches.map(({ seconds, lab }) => [seconds, lab[axis]!] as const),
          },
        ]
      : []),
  ]);
  const bath = `${degrees(shade.celsius)}, ${percent(shade.strength)} strength${shade.base === null ? "" : `, on ${shade.base}`}`;
  return {
    title: `${shade.dye}: ${bath}`,
    description: `Colour of parts dipped in ${shade.dye} over time, from ${drawn[0]?.hex ?? "nothing"} to ${drawn.at(-1)?.hex ?? "nothing"}.`,
    x: { label: "dip", unit: "s", from: 0 },
    y: { label: "CIELAB", unit: "" },
    series,
    ...(window ? { bands: [{ from: window[0], to: window[1] ?? last, label: target.name }] } : {}),
    strip: drawn.slice(1).map((point, i) => ({ x0: drawn[i]!.seconds, x1: point.seconds, hex: point.hex })),
  };
}
