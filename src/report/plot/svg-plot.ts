import {
  line,
  type SymbolType,
  symbol,
  symbolCircle,
  symbolDiamond,
  symbolSquare,
  symbolTriangle,
} from "d3-shape";
import { widthOf } from "../format/wrap.js";
import { coordinate, element, escapeMarkup } from "./markup.js";
import { axisCaption, type Plot, type PlotPoint, type PlotSeries } from "./plot.js";
import { type AxisScale, plotScales } from "./scales.js";
import { colourCount, dashes, svgStyle } from "./svg-style.js";

const size = { width: 680, height: 420 };
const lineHeight = 18;
const symbols: readonly SymbolType[] = [symbolCircle, symbolSquare, symbolTriangle, symbolDiamond];
const dotArea = 56;
/** About as wide as a character of the drawing's text. */
const characterWidth = 7;

interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: AxisScale;
  readonly y: AxisScale;
}

const text = (x: number, y: number, kind: string, content: string, anchor?: "middle" | "end"): string =>
  element("text", { x, y, class: kind, "text-anchor": anchor }, escapeMarkup(content));
const rule = (kind: string, x1: number, y1: number, x2: number, y2: number): string =>
  element("line", { class: kind, x1, y1, x2, y2 });

/** How a series is drawn: the number of its own colour, dashes and shape among those of its kind. */
interface Mark {
  readonly series: PlotSeries;
  readonly colour: number;
  readonly among: number;
}

function marksOf(series: readonly PlotSeries[]): Mark[] {
  const seen = { line: 0, dots: 0 };
  return series.map((one, i) => ({ series: one, colour: i % colourCount, among: seen[one.kind]++ }));
}

const linePath = line<PlotPoint>().digits(2);

function drawnLine(points: readonly PlotPoint[], { series, colour, among }: Mark): string {
  return element("path", {
    class: `dw-line${colour}`,
    style: series.colour === undefined ? undefined : `stroke:${series.colour}`,
    fill: "none",
    "stroke-width": 2.25,
    "stroke-linejoin": "round",
    "stroke-dasharray": dashes[among % dashes.length],
    d: linePath([...points]) ?? "",
  });
}

function drawnDots(points: readonly PlotPoint[], { series, colour, among }: Mark): string {
  const d = symbol(symbols[among % symbols.length], dotArea).digits(2)() ?? "";
  const own =
    series.colour === undefined ? { class: `dw-dots${colour}` } : { class: "dw-edge", fill: series.colour };
  const dots = points.map(([x, y]) =>
    element("path", { transform: `translate(${coordinate(x)} ${coordinate(y)})`, d }),
  );
  return element("g", { ...own, "stroke-width": 1 }, dots.join(""));
}

function drawn(mark: Mark, { x, y }: Frame): string {
  const points = mark.series.points.map(([px, py]): PlotPoint => [x.at(px), y.at(py)]);
  return mark.series.kind === "line" ? drawnLine(points, mark) : drawnDots(points, mark);
}

function axes(plot: Plot, { left, right, top, bottom, x, y }: Frame, under: number): string[] {
  const middle = (top + bottom) / 2;
  return [
    ...y.ticks.flatMap(({ value, label }) => [
      rule("dw-grid", left, y.at(value), right, y.at(value)),
      text(left - 8, y.at(value) + 4, "dw-quiet", label, "end"),
    ]),
    ...x.ticks.flatMap(({ value, label }) => [
      rule("dw-axis", x.at(value), under, x.at(value), under + 5),
      text(x.at(value), under + 20, "dw-quiet", label, "middle"),
    ]),
    rule("dw-axis", left, bottom, right, bottom),
    text((left + right) / 2, under + 42, "dw-ink", axisCaption(plot.x), "middle"),
    element(
      "text",
      {
        class: "dw-ink",
        "text-anchor": "middle",
        transform: `translate(18 ${coordinate(middle)}) rotate(-90)`,
      },
      escapeMarkup(axisCaption(plot.y)),
    ),
  ];
}

function bands({ bands: list = [] }: Plot, { left, right, top, bottom, x }: Frame): string[] {
  return list.flatMap(({ from, to, label }, i) => {
    const [start, end] = [x.at(from), x.at(to)];
    const half = (label.length * characterWidth) / 2;
    const middle = Math.min(right - half, Math.max(left + half, (start + end) / 2));
    return [
      element("rect", {
        class: "dw-band",
        "fill-opacity": "0.16",
        x: start,
        y: top,
        width: Math.max(1, end - start),
        height: bottom - top,
      }),
      text(middle, top + 14 + i * lineHeight, "dw-ink", label, "middle"),
    ];
  });
}

const strip = (pieces: NonNullable<Plot["strip"]>, { bottom, x }: Frame, height: number): string[] =>
  pieces.map(({ x0, x1, hex }) =>
    // A hair wider than its piece, so that no seam shows between two.
    element("rect", { x: x.at(x0), y: bottom + 4, width: x.at(x1) - x.at(x0) + 0.3, height, fill: hex }),
  );

/** Names of the series in lines under the title, each behind its mark. */
function legend(marks: readonly Mark[], left: number, right: number, top: number) {
  let [x, y] = [left, top];
  const parts = marks.map((mark) => {
    const wide = 34 + widthOf(mark.series.name) * characterWidth;
    if (x > left && x + wide > right) [x, y] = [left, y + lineHeight];
    const sign =
      mark.series.kind === "line"
        ? drawnLine(
            [
              [x, y - 4],
              [x + 24, y - 4],
            ],
            mark,
          )
        : drawnDots([[x + 12, y - 4]], mark);
    const part = sign + text(x + 30, y, "dw-ink", mark.series.name);
    x += wide + 14;
    return part;
  });
  return { parts, bottom: marks.length === 0 ? top - lineHeight : y };
}

/** A long title is set smaller rather than cut. */
const titleSize = (title: string): number =>
  Math.min(16, ((size.width - 40) * 1.7) / Math.max(1, widthOf(title)));

/** Where a plot is in its document: its number among the plots, which ids are told apart by, and its upper edge. */
interface Place {
  readonly number?: number;
  readonly y?: number;
}

/**
 * A plot as an SVG document of its own: no script, no font or file from elsewhere, light and dark by the reader's
 * system, the same bytes for the same plot.
 */
export function svgPlot(plot: Plot, { number = 1, y }: Place = {}): string {
  const { width, height } = size;
  const marks = marksOf(plot.series);
  const right = width - 20;
  const named = legend(marks, 20, right, 50);
  const top = named.bottom + 18;
  const stripHeight = plot.strip === undefined ? 0 : 22;
  const bottom = height - 56 - (stripHeight === 0 ? 0 : stripHeight + 8);
  const counts = { x: 8, y: 6 };
  const wanted = (left: number) => plotScales(plot, { x: [left, right], y: [bottom, top] }, counts);
  const widest = Math.max(...wanted(0).y.ticks.map(({ label }) => label.length));
  const left = 40 + widest * characterWidth;
  const frame: Frame = { left, right, top, bottom, ...wanted(left) };
  const under = stripHeight === 0 ? bottom : bottom + 4 + stripHeight;
  const id = (of: string): string => `dw-${of}${number === 1 ? "" : `-${number}`}`;
  return `${element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      y,
      width: String(width),
      height: String(height),
      viewBox: `0 0 ${width} ${height}`,
      role: "img",
      "aria-labelledby": `${id("title")} ${id("desc")}`,
      "font-family": "system-ui, 'DejaVu Sans', Arial, sans-serif",
      "font-size": "13",
    },
    [
      "",
      element("title", { id: id("title") }, escapeMarkup(plot.title)),
      element("desc", { id: id("desc") }, escapeMarkup(plot.description ?? axesInWords(plot))),
      element("style", {}, svgStyle),
      element("rect", { class: "dw-paper", width: String(width), height: String(height) }),
      element(
        "text",
        { x: 20, y: 26, class: "dw-ink", "font-size": titleSize(plot.title), "font-weight": "600" },
        escapeMarkup(plot.title),
      ),
      ...named.parts,
      ...bands(plot, frame),
      ...axes(plot, frame, under),
      ...(plot.strip === undefined ? [] : strip(plot.strip, frame, stripHeight)),
      ...marks.filter(({ series }) => series.kind === "line").map((mark) => drawn(mark, frame)),
      ...marks.filter(({ series }) => series.kind === "dots").map((mark) => drawn(mark, frame)),
      "",
    ].join("\n"),
  )}\n`;
}

/** Plots as one SVG document, below one another. */
export function svgPicture(plots: readonly Plot[]): string {
  const [only] = plots;
  if (plots.length === 1) return svgPlot(only!);
  const { width } = size;
  const height = plots.length * size.height;
  return `${element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: String(width),
      height: String(height),
      viewBox: `0 0 ${width} ${height}`,
    },
    ["", ...plots.map((plot, i) => svgPlot(plot, { number: i + 1, y: i * size.height }).trimEnd()), ""].join(
      "\n",
    ),
  )}\n`;
}

const axesInWords = ({ x, y, series }: Plot): string =>
  `${axisCaption(y)} over ${axisCaption(x)}: ${series.map(({ name }) => name).join(", ")}`;
