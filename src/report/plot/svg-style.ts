/** Marks of a series stay apart by shape and dashes where colour does not tell. */
export const dashes: readonly (string | undefined)[] = [undefined, "7 4", "2 3", "9 3 2 3"];

const light = ["#1d5fb4", "#b3491f", "#2b7a4b", "#7d4aa6"];
const dark = ["#7fb2ff", "#ff9e73", "#7fd39b", "#cfa6f5"];
/** Number of own colours, after which they start again. */
export const colourCount = light.length;

const colours = (ink: string, quiet: string, grid: string, paper: string, marks: readonly string[]): string =>
  [
    `.dw-paper{fill:${paper}}`,
    `.dw-ink{fill:${ink}}`,
    `.dw-quiet{fill:${quiet}}`,
    `.dw-grid{stroke:${grid}}`,
    `.dw-axis,.dw-edge{stroke:${quiet}}`,
    `.dw-band{fill:${quiet}}`,
    ...marks.flatMap((mark, i) => [
      `.dw-line${i}{stroke:${mark}}`,
      `.dw-dots${i}{fill:${mark};stroke:${paper}}`,
    ]),
  ].join("");

/** Colours for a light page, and for a dark one where the reader's system asks for it. */
export const svgStyle = `${colours("#1b1f24", "#57606a", "#d9dee4", "#ffffff", light)}@media (prefers-color-scheme:dark){${colours("#e8edf2", "#a3acb6", "#353c45", "#14181d", dark)}}`;
