import type { Plot, PlotPoint } from "../../../src/report/plot/plot.js";

const curve = (height: (x: number) => number): PlotPoint[] =>
  Array.from({ length: 101 }, (_, i) => [i / 10, height(i / 10)]);

/** Everything that a plot can hold. */
export const samplePlot: Plot = {
  title: "Depth over time <fresh & weak>",
  description: 'Two "curves" and four readings',
  x: { label: "time", unit: "min", from: 0 },
  y: { label: "depth", unit: "", from: 0 },
  series: [
    { name: "fresh bath", kind: "line", points: curve((x) => 5 * (1 - Math.exp(-0.5 * x))) },
    { name: "weak bath", kind: "line", points: curve((x) => (4 * x) / (2 + x)) },
    {
      name: "swatches",
      kind: "dots",
      points: [
        [1, 2],
        [2, 3.1],
        [4, 4.4],
        [8, 4.9],
      ],
      colour: "#8a3324",
    },
  ],
  bands: [{ from: 2, to: 3, label: "within tolerance" }],
  strip: [
    { x0: 0, x1: 5, hex: "#f2d9b0" },
    { x0: 5, x1: 10, hex: "#8a3324" },
  ],
};

/** The least that a plot can hold. */
export const bare = (points: readonly PlotPoint[], kind: "line" | "dots" = "line"): Plot => ({
  title: "bare",
  x: { label: "x", unit: "" },
  y: { label: "y", unit: "" },
  series: [{ name: "one", kind, points }],
});
