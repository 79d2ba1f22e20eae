import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { Plot, PlotAxis } from "./plot.js";

/** Where numbers of an axis are drawn, and the round numbers to write beside it. */
export interface AxisScale {
  readonly at: ScaleLinear<number, number>;
  readonly ticks: readonly { readonly value: number; readonly label: string }[];
}

function extent(values: readonly number[], { from, to }: PlotAxis): [number, number] {
  const all = [...values, ...(from === undefined ? [] : [from]), ...(to === undefined ? [] : [to])];
  for (const value of all) if (!Number.isFinite(value)) throw new Error(`a plot cannot show ${value}`);
  if (all.length === 0) return [0, 1];
  const low = all.reduce((least, value) => Math.min(least, value));
  const high = all.reduce((most, value) => Math.max(most, value));
  // Ticks between numbers as good as equal would need more digits than there are.
  const size = Math.max(Math.abs(low), Math.abs(high));
  if (high - low > 1e-12 * size && size > 1e-100) return [low, high];
  const room = size > 1e-100 ? size / 2 : 1;
  return [low - room, high + room];
}

function scale(
  domain: [number, number],
  range: readonly [number, number],
  count: number,
  nice: boolean,
): AxisScale {
  const at = scaleLinear().domain(domain).range(range);
  if (nice) at.nice(count);
  const format = at.tickFormat(count);
  return { at, ticks: at.ticks(count).map((value) => ({ value, label: format(value) })) };
}

/**
 * The scales of a plot over the ranges given, with about so many ticks. The y axis ends on ticks; the x axis where
 * the data end, so that no width is lost.
 */
export function plotScales(
  { x, y, series, bands = [], strip = [] }: Plot,
  ranges: { readonly x: readonly [number, number]; readonly y: readonly [number, number] },
  counts: { readonly x: number; readonly y: number },
): { readonly x: AxisScale; readonly y: AxisScale } {
  const points = series.flatMap((one) => one.points);
  const xs = [
    ...points.map(([value]) => value),
    ...bands.flatMap(({ from, to }) => [from, to]),
    ...strip.flatMap(({ x0, x1 }) => [x0, x1]),
  ];
  return {
    x: scale(extent(xs, x), ranges.x, counts.x, false),
    y: scale(
      extent(
        points.map(([, value]) => value),
        y,
      ),
      ranges.y,
      counts.y,
      true,
    ),
  };
}
