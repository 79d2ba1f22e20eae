import { visible } from "../diagnostics/visible.js";
import type { Plot, PlotAxis } from "./plot/plot.js";
import type { Block, Report } from "./report.js";
import type { Column, Table } from "./table.js";

const visibleColumn = (column: Column): Column => ({ ...column, title: visible(column.title) });

const visibleTable = ({ columns, rows, notes }: Table): Table => ({
  columns: columns.map(visibleColumn),
  rows: rows.map((row) => row.map((cell) => (typeof cell === "string" ? visible(cell) : cell))),
  ...(notes === undefined ? {} : { notes: notes.map((note) => note && visible(note)) }),
});

const visibleAxis = (axis: PlotAxis): PlotAxis => ({ ...axis, label: visible(axis.label) });

const visiblePlot = (plot: Plot): Plot => ({
  ...plot,
  title: visible(plot.title),
  ...(plot.description === undefined ? {} : { description: visible(plot.description) }),
  x: visibleAxis(plot.x),
  y: visibleAxis(plot.y),
  series: plot.series.map((one) => ({ ...one, name: visible(one.name) })),
  ...(plot.bands === undefined
    ? {}
    : { bands: plot.bands.map((band) => ({ ...band, label: visible(band.label) })) }),
});

function visibleBlock(block: Block, picture: (plot: Plot) => Plot): Block {
  switch (block.kind) {
    case "heading":
    case "paragraph":
      return { ...block, text: visible(block.text) };
    case "list":
      return { ...block, items: block.items.map(visible) };
    case "table":
      return { ...block, table: visibleTable(block.table) };
    case "code":
      return { ...block, lines: block.lines.map(visible) };
    case "plot":
      return { ...block, plot: picture(block.plot) };
  }
}

/** A report as people may see it: control characters in its blocks and its picture are shown as escapes. */
export function visibleReport({ blocks, picture, ...report }: Report): Report {
  const shown = new Map(picture?.map((plot) => [plot, visiblePlot(plot)]));
  // A block that shows a plot of the picture goes on showing the same.
  const plotOf = (plot: Plot): Plot => shown.get(plot) ?? visiblePlot(plot);
  return {
    ...report,
    blocks: blocks.map((block) => visibleBlock(block, plotOf)),
    ...(picture === undefined ? {} : { picture: picture.map(plotOf) }),
  };
}
