import { median } from "../../core/maths/median.js";
import type { Estimated } from "../../core/quality/estimates/estimate.js";
import type {
  ChartedDifference,
  Review,
  ReviewBath,
  ReviewChart,
  ReviewEstimates,
} from "../../core/quality/review/review-model.js";
import { counted } from "../../core/quantity/text/counted.js";
import type { Plot } from "../plot/plot.js";
import { type Block, paragraph, type Report } from "../report.js";
import type { Column, Table } from "../table.js";
import { decimals, significant } from "../words/digits.js";

const places = (count: number) => (value: number) => decimals(value, count);
const digits = (count: number) => (value: number) => significant(value, count);

const pointColumns: readonly Column[] = [
  { key: "bath", title: "bath" },
  { key: "time", title: "time" },
  { key: "shade", title: "shade" },
  { key: "delta_E00", title: "off by", digits: places(2) },
  { key: "delta_L", title: "ΔL", digits: places(2) },
  { key: "delta_C", title: "ΔC", digits: places(2) },
  { key: "delta_H", title: "ΔH", digits: places(2) },
  { key: "ewma", title: "average ΔL", digits: places(2) },
  { key: "out", title: "out" },
];

const pointsTable = (baths: readonly ReviewBath[]): Table => ({
  columns: pointColumns,
  rows: baths.flatMap(({ bath, points }) =>
    points.map((one) => [
      bath,
      one.time,
      one.shade,
      one.deltaE00,
      one.deltaL,
      one.deltaC,
      one.deltaH,
      one.ewma,
      one.out ? "yes" : "",
    ]),
  ),
});

const differenceNames: Readonly<Record<ChartedDifference, readonly [what: string, label: string]>> = {
  deltaL: ["lightness against the shade", "ΔL"],
  deltaC: ["chroma against the shade", "ΔC"],
  deltaH: ["hue against the shade", "ΔH"],
  deltaE00: ["difference from the shade", "CIEDE2000"],
};

/** A difference of a bath's loads from their shades, in the order of work, with the average and its limits. */
function plotOf({ bath, points }: ReviewBath, { of, limits, ewma }: ReviewChart): Plot {
  const along = (value: (i: number) => number) => points.map((_, i) => [i + 1, value(i)] as const);
  const [what, label] = differenceNames[of];
  const [lower, upper] = limits;
  const between =
    lower === null
      ? `under a limit of ${upper.toFixed(1)}`
      : `between limits of ${lower.toFixed(1)} and ${upper.toFixed(1)}`;
  return {
    title: `${bath}: ${what}, load by load`,
    description: `${label} of ${points.length} loads, ${between}.`,
    x: { label: "load that was read", unit: "", from: 1 },
    y: { label, unit: "" },
    series: [
      { name: "read", kind: "dots", points: along((i) => points[i]![of]) },
      { name: "average", kind: "line", points: along((i) => ewma[i]!) },
      { name: "upper limit", kind: "line", points: along(() => upper) },
      ...(lower === null ? [] : [{ name: "lower limit", kind: "line" as const, points: along(() => lower) }]),
    ],
  };
}

/** Lightness always, every other difference where something is out of control on it alone. */
const plotsOf = (bath: ReviewBath): Plot[] => {
  const shown = bath.charts.find(({ of }) => of === "deltaL")?.out ?? [];
  return bath.charts
    .filter(
      ({ of, out }) => of === "deltaL" || (of !== "deltaE00" && out.some((place) => !shown.includes(place))),
    )
    .map((chart) => plotOf(bath, chart));
};

const share = (value: number | null): string =>
  value === null ? "not inspected" : `${Math.round(100 * value)} %`;

const bathTable = (baths: readonly ReviewBath[]): Table => ({
  columns: [
    { key: "bath", title: "bath" },
    { key: "loads", title: "loads", digits: places(0) },
    { key: "parts", title: "parts", digits: places(0) },
    { key: "good", title: "good" },
    { key: "read", title: "read", digits: places(0) },
    { key: "off_E00", title: "off by, median", digits: places(1) },
  ],
  rows: baths.map(({ bath, loads, parts, goodShare, points }) => [
    bath,
    loads,
    parts,
    share(goodShare),
    points.length,
    median(points.map(({ deltaE00 }) => deltaE00)) ?? null,
  ]),
});

/** What would show a figure that the log does not show. */
const tells: Readonly<Record<string, string>> = {
  timeFactor: "the colour of one part of every load, of a dye that has swatches",
  uptakeMlPerDm2: "readings while the bath weakens, or evidence under uptake",
  uptakeGPerDm2: "readings while the bath weakens, or evidence under uptake",
  dragOutMlPerDm2: "waterMl of many top-ups in the log, or ten parts weighed wet and dry",
  strengthExponent: "a swatch from a half-strength bath",
  activationEnergyKJPerMol: "celsius of many loads in the log, or a swatch dipped cooler",
};

const figureNames: Readonly<Record<string, string>> = {
  timeFactor: "factor on times",
  uptakeMlPerDm2: "uptake, mL/dm2",
  uptakeGPerDm2: "uptake, g/dm2",
  dragOutMlPerDm2: "drag-out, mL/dm2",
  strengthExponent: "exponent of strength",
  activationEnergyKJPerMol: "activation energy, kJ/mol",
};

/** Every figure that the dye has, with what it is called. */
const namedFigures = (estimates: ReviewEstimates) =>
  Object.entries(figureNames).flatMap(([key, title]) => {
    const one = estimates[key as keyof ReviewEstimates] as Estimated | undefined;
    return one === undefined ? [] : [{ key, title, one }];
  });

const estimatesTable = (estimates: ReviewEstimates): Table => ({
  columns: [
    { key: "figure", title: "figure" },
    { key: "value", title: "value", digits: digits(3) },
    { key: "standard_error", title: "standard error", digits: digits(2) },
    { key: "loads_to_halve", title: "loads to halve it", digits: places(0) },
    { key: "told", title: "" },
  ],
  rows: namedFigures(estimates).map(({ title, one }) => [
    title,
    one.withUptake ?? one.value,
    one.told ? one.standardError : null,
    one.told ? one.loadsToHalve : null,
    one.told ? "" : one.withUptake !== undefined ? "with the uptake" : "as it was",
  ]),
});

/** Nobody waits for more loads than these to know a figure better. Common practice, no source. */
const mostLoadsAhead = 300;

/** What the log does not show yet, and what would show it. */
const untold = (estimates: ReviewEstimates): string[] =>
  namedFigures(estimates).flatMap(({ key, title, one }) => {
    if (one.told) return [];
    if (one.withUptake !== undefined)
      return [
        `${title}: the log does not show it alone; ${significant(one.withUptake, 3)} goes with the uptake, and only with it.`,
      ];
    const more =
      one.loadsToHalve === null || one.loadsToHalve > mostLoadsAhead
        ? ""
        : `; ${one.loadsToHalve} more loads halve its error`;
    return [
      `${title}: the log does not show it well enough yet, so it stays as it was. What would show it: ${tells[key]}${more}.`,
    ];
  });

const lotsTable = (review: Review): Table => ({
  columns: [
    { key: "lot", title: "lot" },
    { key: "kind", title: "of" },
    { key: "dye", title: "dye" },
    { key: "loads", title: "loads", digits: places(0) },
    { key: "delta_E00", title: "moved by", digits: places(1) },
    { key: "doubt95", title: "chance alone", digits: places(1) },
    { key: "bare_delta_E00", title: "bare part", digits: places(1) },
    { key: "named", title: "" },
  ],
  rows: review.lots.map(({ lot, kind, dye, loads, deltaE00, doubt95, bareDeltaE00, named }) => [
    lot,
    kind,
    dye,
    loads,
    deltaE00,
    doubt95,
    bareDeltaE00,
    named ? "differs" : "",
  ]),
});

const useTable = (review: Review): Table => ({
  columns: [
    { key: "dye", title: "dye" },
    { key: "month", title: "month" },
    { key: "part", title: "part" },
    { key: "parts", title: "parts", digits: places(0) },
    { key: "per_part", title: "dye a part", digits: digits(3) },
    { key: "per_dm2", title: "dye a dm2", digits: digits(3) },
  ],
  rows: review.use.map(({ dye, month, part, parts, perPart, perDm2 }) => [
    dye,
    month,
    part,
    parts,
    perPart,
    perDm2,
  ]),
});

/** A time to the minute. */
const spoken = (time: string): string => time.slice(0, "2027-04-16T09:31".length).replace("T", " ");

const heading = (text: string): Block => ({ kind: "heading", level: 2, text });
const list = (items: readonly string[]): Block[] => (items.length === 0 ? [] : [{ kind: "list", items }]);
const table = (of: Table): Block[] => (of.rows.length === 0 ? [] : [{ kind: "table", table: of }]);

/** What the log teaches, in every format: CSV has a row for each load that was read. */
export function reviewReport(review: Review): Report {
  const charts = review.baths.flatMap(plotsOf);
  return {
    name: "review",
    data: { ...review },
    rows: pointsTable(review.baths),
    ...(charts.length === 0 ? {} : { picture: charts }),
    blocks: [
      { kind: "heading", level: 1, text: "What the log teaches" },
      ...(review.actions.length === 0
        ? [paragraph("Nothing to change now.")]
        : [{ kind: "list" as const, items: review.actions }]),
      ...(review.paste === ""
        ? [paragraph("The log teaches nothing that the batch file does not have.")]
        : [
            paragraph("Paste into the batch file, each key under its name that is there:"),
            { kind: "code" as const, lines: review.paste.trimEnd().split("\n") },
          ]),
      heading("Baths"),
      ...table(bathTable(review.baths)),
      ...charts.map((plot): Block => ({ kind: "plot", plot })),
      ...review.baths.flatMap(({ bath, runs }) =>
        runs.map((run) =>
          paragraph(
            `${bath}: ${run.loads === 1 ? `the load of ${spoken(run.from)} is` : `${run.loads} loads from ${spoken(run.from)} to ${spoken(run.to)} are`} ${run.sides.join(", ").replace(/, ([^,]+)$/, " and $1")} than chance explains: ${run.said}.`,
          ),
        ),
      ),
      ...Object.entries(review.estimates).flatMap(([dye, estimates]) => [
        heading(`${dye}, from ${counted(estimates.readings, "reading")}`),
        ...table(estimatesTable(estimates)),
        ...list(untold(estimates)),
      ]),
      ...(review.lots.length === 0 ? [] : [heading("Lots, against the first"), ...table(lotsTable(review))]),
      heading("Where the dye went"),
      ...review.dyes.map((one) =>
        paragraph(
          `${one.dye}: ${Math.round(one.added)} ${one.unit} added${one.addedPerPart === null ? "" : `, ${significant(one.addedPerPart, 3)} ${one.unit} a part`}; ${significant(one.takenUp, 3)} ${one.unit} on parts, ${significant(one.draggedOut, 3)} ${one.unit} to rinse water (${Math.round(one.rinseL)} L), ${significant(one.dumped, 3)} ${one.unit} dumped.`,
        ),
      ),
      ...table(useTable(review)),
    ],
  };
}
