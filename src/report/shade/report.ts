import { duration } from "../../core/quantity/text/duration.js";
import { timeFactorText } from "../../core/uptake/law/time-factor-text.js";
import type { ShadeDescription, ShadePoint } from "../../core/uptake/shade/describe-shade.js";
import { type Block, paragraph, type Report } from "../report.js";
import type { Cell, Column, Table } from "../table.js";
import { degrees, percent } from "../words/amounts.js";
import { decimals } from "../words/digits.js";
import { sentence } from "../words/sentence.js";
import { lawText, responseText } from "./law.js";
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
    text("interval_from", target.intervalFrom),
    number("slope_E00_per_s", 4, target.slopePerSecond),
    text("reachable", yes(target.reachable)),
    text("extrapolated", yes(target.extrapolated)),
    number("hold_s", 1, target.sensitivity?.seconds.hold.within ?? null),
    number("hold_C", 2, target.sensitivity?.celsius.hold.within ?? null),
    number("hold_strength_pct", 2, target.sensitivity?.strengthPercent.hold.within ?? null),
  ];
  return { columns: fields.map(([column]) => column), rows: [fields.map(([, cell]) => cell)] };
}

const wanted = (shade: ShadeDescription): Block[] => {
  const { target } = shade;
  if (target === null) return [];
  const assumed = !(
    target.intervalFrom === "temperature" ? shade.activationEnergyKJPerMol : shade.strengthExponent
  ).measured;
  const row = (which: string, hex: string | null, lab: readonly number[] | null): Cell[] => [
    which,
    hex,
    ...(lab ?? [null, null, null]),
  ];
  return [
    ...(target.wanted === null
      ? []
      : [
          {
            kind: "table" as const,
            table: {
              columns: [
                { key: "which", title: "" },
                { key: "hex", title: "colour", swatch: true },
                ...labColumns,
              ],
              rows: [
                row("target", target.wantedHex, target.wanted),
                row("to expect", target.hex, target.lab),
              ],
            },
          },
        ]),
    { kind: "list", items: targetSentences(target, assumed) },
    ...sensitivityBlocks(target),
  ];
};

function trialBlocks({ trial, dye }: ShadeDescription): Block[] {
  if (trial === null) return [];
  const slower = trial.factor >= 1 ? "slower" : "faster";
  return [
    paragraph(
      `The trial of ${duration(trial.seconds)} says that this bath dyes ${slower} than foreseen: all times for ${dye} in it are multiplied by ${trial.factor.toFixed(2)}.`,
    ),
  ];
}

function movedBaseBlocks({ movedBase, base }: ShadeDescription): Block[] {
  if (movedBase === null) return [];
  return [
    paragraph(
      `The swatches were dyed on a base that is ${movedBase.deltaE00.toFixed(1)} CIEDE2000 from ${base} as it is now. What that does to their colours (estimates), and the dip that comes nearest to the old colour:`,
    ),
    {
      kind: "table",
      table: {
        columns: [
          { key: "dip_s", title: "dip", show: duration },
          { key: "off_E00", title: "off by", digits: places(1) },
          { key: "corrected_s", title: "dip instead", show: duration },
          { key: "corrected_off_E00", title: "then off by", digits: places(1) },
        ],
        rows: movedBase.colours.map(({ seconds, deltaE00, correctedSeconds, correctedDeltaE00 }) => [
          seconds,
          deltaE00,
          correctedSeconds,
          correctedDeltaE00,
        ]),
      },
    },
  ];
}

function curveBlocks(shade: ShadeDescription): Block[] {
  if (shade.swatches.length === 1)
    return [
      ...(shade.curve.length === 0 ? [] : [{ kind: "table" as const, table: curveTable(shade.curve) }]),
      paragraph(
        `One swatch tells only its own colour. Dip at least one more, a quarter and three times as long: dipwright swatches --dye ${shade.dye} says which.`,
      ),
    ];
  return [
    { kind: "table", table: curveTable(shade.curve) },
    paragraph(lawText(shade)),
    paragraph(responseText(shade)),
    ...(shade.timeFactor === 1 ? [] : [paragraph(sentence(timeFactorText(shade.dye, shade.timeFactor)))]),
    paragraph(`dipwright swatches --dye ${shade.dye} says which swatch would help most.`),
  ];
}

/** A shade curve, and the time for a target in it, in every format. */
export function shadeReport(shade: ShadeDescription): Report {
  const bath = `${degrees(shade.celsius)}, ${percent(shade.strength)} strength${shade.base === null ? "" : `, on ${shade.base}`}`;
  const { drawn: _, ...data } = shade;
  return {
    name: "shade",
    data,
    ...(shade.drawn.length === 0 ? {} : { picture: [shadePicture(shade)] }),
    rows: shade.target === null ? curveTable(shade.curve) : targetRow(shade),
    blocks: [
      { kind: "heading", level: 1, text: `${shade.dye}: ${bath}` },
      ...wanted(shade),
      ...trialBlocks(shade),
      ...movedBaseBlocks(shade),
      ...(shade.estimated && shade.movedBase === null
        ? [paragraph("An estimate: the swatches were dyed on another base.")]
        : []),
      { kind: "heading", level: 2, text: "Shade curve" },
      ...curveBlocks(shade),
    ],
  };
}
