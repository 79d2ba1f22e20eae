/** What is counted along a side of a plot. */
export interface PlotAxis {
  readonly label: string;
  /** Said behind the label; empty for a number without a unit. */
  readonly unit: string;
  /** The axis reaches at least from here. */
  readonly from?: number;
  /** The axis reaches at least to here. */
  readonly to?: number;
}

/** A place in the units of the axes. */
export type PlotPoint = readonly [x: number, y: number];

/** Points that belong together: joined by straight lines, or a mark each. */
export interface PlotSeries {
  readonly name: string;
  readonly kind: "line" | "dots";
  readonly points: readonly PlotPoint[];
  /** `#rrggbb` where the colour itself means something; else the writer's own. */
  readonly colour?: string;
}

/** A stretch of the x axis that is marked over the whole height. */
export interface PlotBand {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

/** A stretch of the x axis and the colour, `#rrggbb`, of the bar beneath it. */
export interface PlotStripPiece {
  readonly x0: number;
  readonly x1: number;
  readonly hex: string;
}

/** A drawing of numbers, free of any format. */
export interface Plot {
  readonly title: string;
  /** What the drawing shows in a sentence, for those who cannot see it. */
  readonly description?: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly series: readonly PlotSeries[];
  readonly bands?: readonly PlotBand[];
  /** Colours along x, as of a shade over time. */
  readonly strip?: readonly PlotStripPiece[];
}

/** An axis in words: "time (min)". */
export const axisCaption = ({ label, unit }: PlotAxis): string =>
  unit === "" ? label : `${label} (${unit})`;
