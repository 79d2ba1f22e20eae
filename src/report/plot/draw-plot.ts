import type { Paint } from "../format/paint.js";
import type { Plot } from "./plot.js";

/** Draws a plot as lines of at most `columns` characters; handed in, so that the drawing is loaded only when needed. */
export type DrawPlot = (plot: Plot, columns: number, paint: Paint) => string[];

/** Stands where no plot was expected. */
export const undrawn: DrawPlot = ({ title }) => {
  throw new Error(`nothing was handed in that draws the plot "${title}"`);
};
