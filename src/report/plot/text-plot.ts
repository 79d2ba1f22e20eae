import type { Hex, Paint } from "../format/paint.js";
import { widthOf, wrap } from "../format/wrap.js";
import { axisCaption, type Plot, type PlotPoint, type PlotSeries } from "./plot.js";
import { type AxisScale, plotScales } from "./scales.js";
import { type TextCanvas, textCanvas } from "./text-canvas.js";

/** Three heights within a row of characters, from its top to its bottom. */
const heights = ["'", "-", "."] as const;
/** Signs of further lines, which have one height a row. */
const lineSigns = ["~", "=", "#", "%"] as const;
const dotSigns = ["o", "x", "+", "*"] as const;
/** What shows a series in the drawing and beside its name. */
interface Signs {
  readonly legend: string;
  readonly at: (third: number) => string;
}

function signsOf(series: readonly PlotSeries[]): Signs[] {
  let [lines, dots] = [0, 0];
  return series.map(({ kind }) => {
    if (kind === "dots") {
      const sign = dotSigns[dots++ % dotSigns.length]!;
      return { legend: sign, at: () => sign };
    }
    const further = lines++;
    if (further === 0) return { legend: ".-'", at: (third) => heights[third]! };
    const sign = lineSigns[(further - 1) % lineSigns.length]!;
    return { legend: sign.repeat(3), at: () => sign };
  });
}

/** Height of a line of points, in order of x, at one x; nothing left and right of it. */
function heightAt(points: readonly PlotPoint[], x: number): number | undefined {
  const after = points.findIndex(([at]) => at >= x);
  const [right, left] = [points[after], points[after - 1]];
  if (right === undefined) return undefined;
  if (left === undefined) return right[0] === x ? right[1] : undefined;
  return right[0] === left[0]
    ? right[1]
    : left[1] + ((right[1] - left[1]) * (x - left[0])) / (right[0] - left[0]);
}

/** Where things are on the sheet: the drawing is `width` columns from `left`, and `rows` rows. */
interface Frame {
  readonly left: number;
  readonly width: number;
  readonly rows: number;
  readonly x: AxisScale;
  readonly y: AxisScale;
}

function drawLine(canvas: TextCanvas, frame: Frame, { points }: PlotSeries, signs: Signs): void {
  const inOrder = [...points].sort((a, b) => a[0] - b[0]);
  let before: number | undefined;
  for (let i = 0; i < frame.width; i += 1) {
    const height = heightAt(inOrder, frame.x.at.invert(i));
    if (height === undefined) continue;
    const place = frame.y.at(height);
    const row = Math.round(place);
    const third = Math.min(2, Math.max(0, Math.floor((place - row + 0.5) * 3)));
    const step = Math.sign(row - (before ?? row));
    for (let between = (before ?? row) + step; between !== row; between += step)
      canvas.put(frame.left + i, between, ":");
    canvas.put(frame.left + i, row, signs.at(third));
    before = row;
  }
}

const blank = (columns: number): string[] => Array.from({ length: Math.max(0, columns) }, () => " ");
const written = (cells: readonly string[]): string => cells.join("").trimEnd();

/** Writes a text into a row of characters, centred over a place, where it touches nothing. */
function centred(cells: string[], text: string, middle: number, least = 0): boolean {
  const start = Math.min(
    Math.max(least, Math.round(middle - (text.length - 1) / 2)),
    cells.length - text.length,
  );
  const around = cells.slice(Math.max(0, start - 1), start + text.length + 1);
  if (start < least || around.some((sign) => sign !== " ")) return false;
  for (const [i, sign] of [...text].entries()) cells[start + i] = sign;
  return true;
}

function bandLine(
  { left, width, x }: Frame,
  { from, to, label }: NonNullable<Plot["bands"]>[number],
): string {
  const cells = blank(left + width);
  const [start, end] = [Math.round(x.at(from)) + left, Math.round(x.at(to)) + left];
  for (let i = start; i <= end; i += 1) cells[i] = "=";
  [cells[start], cells[end]] = end > start ? ["[", "]"] : ["|", "|"];
  const behind = cells.length - end - 1;
  if (label.length + 1 <= behind) return written([...cells.slice(0, end + 1), " ", ...label]);
  if (label.length + 1 <= start - left)
    return written([...cells.slice(0, start - 1 - label.length), ...label, " ", ...cells.slice(start)]);
  return written(cells);
}

function stripLine({ left, width, x }: Frame, strip: NonNullable<Plot["strip"]>, paint: Paint): string {
  const canvas = textCanvas(left + width, 1);
  for (let i = 0; i < width; i += 1) {
    const at = x.at.invert(i);
    const piece = strip.find(({ x0, x1 }) => at >= x0 && at <= x1);
    if (piece !== undefined) canvas.put(left + i, 0, " ", piece.hex as Hex);
  }
  return canvas.lines(paint)[0]!.trimEnd();
}

/** Rows for a number of columns: wide enough to read, low enough for a terminal with text above it. */
const rowsFor = (columns: number): number => Math.min(17, Math.max(9, Math.round(columns / 5)));
const asciiMinus = (label: string): string => label.replace("\u2212", "-");

/**
 * A plot as lines of at most `columns` characters, plain ASCII apart from the names in it. Colour adds nothing that
 * the signs do not say, save the strip, which is left out without it.
 */
export function textPlot(plot: Plot, columns: number, paint: Paint): string[] {
  const rows = rowsFor(columns);
  const counts = { x: Math.max(2, Math.floor(columns / 12)), y: Math.max(2, Math.floor(rows / 3)) };
  const draft = plotScales(plot, { x: [0, 1], y: [rows - 1, 0] }, counts);
  const labels = draft.y.ticks.map(({ label }) => asciiMinus(label));
  const left = Math.max(...labels.map((label) => label.length)) + 2;
  const width = Math.max(10, columns - left);
  const { x, y } = plotScales(plot, { x: [0, width - 1], y: [rows - 1, 0] }, counts);
  const frame: Frame = { left, width, rows, x, y };
  const canvas = textCanvas(left + width, rows);
  for (let row = 0; row < rows; row += 1) canvas.put(left - 1, row, "|", "quiet");
  y.ticks.forEach(({ value }, i) => {
    const row = Math.round(y.at(value));
    const label = labels[i]!;
    for (const [j, sign] of [...label].entries()) canvas.put(left - 2 - label.length + j, row, sign, "quiet");
    canvas.put(left - 1, row, "+", "quiet");
  });
  const signs = signsOf(plot.series);
  plot.series.forEach((one, i) => {
    if (one.kind === "line") drawLine(canvas, frame, one, signs[i]!);
  });
  plot.series.forEach((one, i) => {
    if (one.kind === "dots")
      for (const [px, py] of one.points)
        canvas.put(left + Math.round(x.at(px)), Math.round(y.at(py)), signs[i]!.at(0), "strong");
  });
  const [axis, numbers] = [blank(left + width), blank(left + width)];
  axis.fill("-", left - 1);
  axis[left - 1] = "+";
  for (const { value, label } of x.ticks)
    if (centred(numbers, asciiMinus(label), left + x.at(value)))
      axis[left + Math.round(x.at(value)) - (x.at(value) < 0.5 ? 1 : 0)] = "+";
  const captionX = blank(left + width);
  centred(captionX, axisCaption(plot.x), left + width, left);
  const strip = plot.strip === undefined ? "" : stripLine(frame, plot.strip, paint);
  const legend = plot.series.map(({ name }, i) => `${signs[i]!.legend} ${name}`.replaceAll(" ", "\u00a0"));
  return [
    ...wrap(plot.title, columns).map((line) => paint("strong", line)),
    ...(widthOf(axisCaption(plot.y)) <= columns ? [axisCaption(plot.y)] : wrap(axisCaption(plot.y), columns)),
    ...canvas.lines(paint),
    paint("quiet", written(axis)),
    ...(strip === "" ? [] : [strip]),
    paint("quiet", written(numbers)),
    ...(plot.bands ?? []).map((band) => bandLine(frame, band)),
    written(captionX),
    ...wrap(legend.join("   "), columns),
  ];
}
