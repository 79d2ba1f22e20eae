import { labDifference } from "../../../core/colour/difference/cie-differences.js";
import { ciede2000 } from "../../../core/colour/difference/ciede2000.js";
import type { Lab } from "../../../core/model/colour.js";
import { type ControlChart, controlChart, type OutRun } from "../../../core/quality/control-chart.js";
import type { ChartedDifference, ReviewChart } from "../../../core/quality/review/review-model.js";
import { unseenShift } from "../../../core/recipe/carry-over/carry-over.js";

/** What is charted, and how loads above and below its limits are. */
const charted: Readonly<
  Record<ChartedDifference, { readonly above: string; readonly below: string; readonly upperOnly?: boolean }>
> = {
  deltaL: { above: "lighter", below: "darker" },
  deltaC: { above: "more colourful", below: "duller" },
  deltaH: { above: "of another hue", below: "of another hue" },
  deltaE00: { above: "further from their shade", below: "", upperOnly: true },
};
const names = Object.keys(charted) as ChartedDifference[];

/** Differences of a part from its shade. */
export type Differences = Readonly<Record<ChartedDifference, number>>;

export const differences = (target: Lab, lab: Lab): Differences => ({
  ...labDifference(target, lab),
  deltaE00: ciede2000(target, lab),
});

/** Loads one after the other that are out of control on one chart or several. */
export interface Drift extends Pick<OutRun, "since" | "last"> {
  readonly sides: readonly string[];
  /** Undefined where lightness is in control. */
  readonly darker: boolean | undefined;
}

interface Found extends OutRun {
  readonly of: ChartedDifference;
}

const overlap = (one: OutRun, other: OutRun): boolean => one.since <= other.last && other.since <= one.last;

/** Runs of several charts that overlap are one drift. The size of the difference counts only where its parts are in control. */
function driftsOf(runs: readonly Found[]): Drift[] {
  const signed = runs.filter(({ of }) => of !== "deltaE00");
  const groups: Found[][] = [];
  for (const run of runs.toSorted((one, other) => one.since - other.since)) {
    if (run.of === "deltaE00" && signed.some((one) => overlap(one, run))) continue;
    const group = groups.at(-1);
    if (group?.some((one) => overlap(one, run))) group.push(run);
    else groups.push([run]);
  }
  return groups.map((group) => {
    const lightness = group.find(({ of }) => of === "deltaL");
    return {
      // Lightness shows best where a change of dye on the parts began.
      since: (lightness ?? group[0]!).since,
      last: Math.max(...group.map(({ last }) => last)),
      sides: [
        ...new Set(
          names
            .flatMap((name) => group.filter(({ of }) => of === name))
            .map(({ of, side }) => charted[of][side]),
        ),
      ],
      darker: lightness === undefined ? undefined : lightness.side === "below",
    };
  });
}

/** Whether a run goes so far from the usual that somebody sees it: readings that are very alike have limits that are tighter. */
const isSeen = ({ points, limits }: ControlChart, { first, last }: OutRun): boolean =>
  points.slice(first, last + 1).some(({ value }) => Math.abs(value - limits.centre) > unseenShift);

/** Charts of all differences of a bath's loads, and what drifts on them; nothing with fewer than two readings. */
export function chartLoads(
  loads: readonly Differences[],
  readings: number,
): {
  readonly lightness: ControlChart | undefined;
  readonly charts: readonly ReviewChart[];
  readonly drifts: readonly Drift[];
} {
  const found = names.flatMap((of) => {
    const { upperOnly = false } = charted[of];
    const chart = controlChart(
      loads.map((one) => one[of]),
      { readings, upperOnly },
    );
    return chart === undefined ? [] : [{ of, upperOnly, chart }];
  });
  return {
    lightness: found.find(({ of }) => of === "deltaL")?.chart,
    charts: found.map(({ of, upperOnly, chart: { limits, points } }) => ({
      of,
      limits: [upperOnly ? null : limits.lower, limits.upper],
      ewma: points.map(({ ewma }) => ewma),
      out: points.flatMap(({ signals }, i) => (signals.length > 0 ? [i] : [])),
    })),
    drifts: driftsOf(
      found.flatMap(({ of, chart }) =>
        chart.runs.filter((run) => isSeen(chart, run)).map((run) => ({ ...run, of })),
      ),
    ),
  };
}
