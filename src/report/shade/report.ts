import { duration } from "../../core/quantity/text/duration.js";
import type { ShadeDescription, ShadePoint } from "../../core/uptake/shade/describe-shade.js";
import type { SwatchSuggestion } from "../../core/uptake/swatches/suggest-swatch.js";
import type { Block, Report } from "../report.js";
import type { Cell, Column, Table } from "../table.js";
import { degrees, percent } from "../words/amounts.js";
import { decimals } from "../words/digits.js";
import { shadePicture } from "./picture.js";
import { sensitivityBlocks } from "./sensitivity.js";
import { targetSentences } from "./target.js";

const places = (count: number) => (value: number) => decimals(value, count);

const labColumns: readonly Column[] = ["L", "a", "b"].map((key) => ({ key, title: key, digits: places(1) }));
const pointColumns: readonly Column[] = [
  { key: "time_s", title: "dip", digits: places(1), show: duration },
  { key: "hex", title: "colour", swatch: true },
  ...labColumns,
  { key: "depth", title: "depth", digits: places(3) },
  { key: "extrapolated", title: "" },
];

const curveTable = (points: readonly ShadePoint[]): Table => ({
  columns: pointColumns,
  rows: points.map((point) => [
    point.seconds,
    point.hex,
    ...point.lab,
    point.depth,
    point.extrapolated ? "extrapolated" : "",
  ]),
});

function targetRow(shade: ShadeDescription): Table {
  const target = shade.target!;
  const number = (key: string, digits: number, value: number | null): readonly [Column, Cell] => [
    { key, title: key, digits: places(digits) },
    value,
  ];
  const text = (key: string, value: Cell): readonly [Column, Cell] => [{ key, title: key }, value];
  const yes = (value: boolean): string => (value ? "yes" : "no");
  const fields = [
    text("dye", shade.dye),
    text("target", target.name),
    text("base", shade.base),
    number("strength_pct", 1, 100 * shade.strength),
    number("bath_C", 1, shade.celsius),
    number("dip_s", 1, target.seconds),
    number("delta_E00", 2, target.deltaE00),
    number("window_from_s", 1, target.windowSeconds?.[0] ?? null),
    number("window_to_s", 1, target.windowSeconds?.[1] ?? null),
    number("interval95_from_s", 1, target.interval95?.[0] ?? null),
    number("interval95_to_s", 1, target.interval95?.[1] ?? null),
    number("slope_E00_per_s", 4, target.slopePerSecond),
    text("reachable", yes(target.reachable)),
    text("extrapolated", yes(target.extrapolated)),
    number("hold_s", 1, target.sensitivity?.seconds.hold.within ?? null),
    number("hold_C", 2, target.sensitivity?.celsius.hold.within ?? null),
    number("hold_strength_pct", 2, target.sensitivity?.strengthPercent.hold.within ?? null),
  ];
  return { columns: fields.map(([column]) => column), rows: [fields.map(([, cell]) => cell)] };
}

function lawText(shade: ShadeDescription): string {
  const rate = `${shade.ratePerSecond.toPrecision(3)} /s`;
  const from = {
    given: "as given",
    fitted: "fitted to the swatches",
    assumed: "assumed, since one swatch does not tell it",
  };
  const how =
    shade.law === "parabolic" && shade.rateFrom === "fitted"
      ? "(which has no rate of its own)"
      : `at ${rate}, ${from[shade.rateFrom]}`;
  const check = shade.leaveOneOut
    ? ` Left out in turn, each swatch is foretold from the others to ${shade.leaveOneOut.median.toFixed(1)} CIEDE2000 (median; ${shade.leaveOneOut.max.toFixed(1)} at worst).`
    : " With fewer than three swatches nothing checks it.";
  return `Uptake: ${shade.law} law ${how}.${check}`;
}

const wanted = (shade: ShadeDescription): Block[] =>
  shade.target === null
    ? []
    : [
        {
          kind: "table",
          table: {
            columns: [
              { key: "which", title: "" },
              { key: "hex", title: "colour", swatch: true },
              ...labColumns,
            ],
            rows: [
              ["wanted", shade.target.wantedHex, ...shade.target.wanted],
              ["to expect", shade.target.hex, ...shade.target.lab],
            ],
          },
        },
        { kind: "list", items: targetSentences(shade.target) },
        ...sensitivityBlocks(shade.target),
      ];

/** Text of a suggestion for the next swatch. */
function suggestionText(found: SwatchSuggestion | undefined): string {
  return found === undefined
    ? "No further swatch would make this time surer than rereading those there are."
    : `Next swatch: dip one for ${duration(found.seconds)}. The 95 % interval of the time would shrink from ${found.widthNow.toFixed(1)} s to about ${found.widthThen.toFixed(1)} s (in a fresh bath).`;
}

/** A shade curve, and the time for a target in it, in every format. */
export function shadeReport(shade: ShadeDescription, suggestion?: SwatchSuggestion | null): Report {
  const bath = `${degrees(shade.celsius)}, ${percent(shade.strength)} strength${shade.base === null ? "" : `, on ${shade.base}`}`;
  const asked = suggestion !== undefined;
  const { drawn: _, ...data } = shade;
  return {
    name: "shade",
    data: { ...data, ...(asked ? { suggestion } : {}) },
    picture: shadePicture(shade),
    rows: shade.target === null ? curveTable(shade.curve) : targetRow(shade),
    blocks: [
      { kind: "heading", level: 1, text: `${shade.dye}: ${bath}` },
      ...wanted(shade),
      ...(asked ? [{ kind: "paragraph" as const, text: suggestionText(suggestion ?? undefined) }] : []),
      ...(shade.estimated
        ? [{ kind: "paragraph" as const, text: "An estimate: the swatches were dyed on another base." }]
        : []),
      { kind: "heading", level: 2, text: "Shade curve" },
      { kind: "table", table: curveTable(shade.curve) },
      { kind: "paragraph", text: lawText(shade) },
    ],
  };
}
