import { duration } from "../../core/quantity/text/duration.js";
import type { SheetDip } from "../../core/uptake/swatches/first-swatches.js";
import { paragraph, type Report } from "../report.js";
import type { Cell, Column } from "../table.js";
import { degrees, percent } from "../words/amounts.js";
import { trimmed } from "../words/digits.js";

/** What is to be dipped, and why. */
export interface SwatchSheet {
  readonly dye: string;
  /** Empty where no swatch helps much. */
  readonly dips: readonly SheetDip[];
  /** Share by which the intervals of the times asked for shrink; null before any swatch. */
  readonly gain: number | null;
  /** What the intervals belong to: names of shades, or nothing where the uptake law is asked about. */
  readonly asked: readonly string[];
  /** How many swatches there are. */
  readonly known: number;
}

/** Every dip in the order of work; repeats come last. */
const inOrder = (dips: readonly SheetDip[]): readonly SheetDip[] => [
  ...dips,
  ...dips.flatMap((dip) => Array.from({ length: dip.copies - 1 }, () => dip)),
];

function why({ dips, gain, asked, known }: SwatchSheet): string {
  const what = asked.length === 0 ? "the constants of the uptake law" : `the times for ${asked.join(", ")}`;
  if (gain === null)
    return known === 0
      ? "Dip these in one fresh bath, in this order; the last repeats the first and shows whether anything drifted."
      : "One swatch tells only its own colour: dip these in a fresh bath.";
  if (dips.length === 0)
    return `No further swatch helps much: the best would make ${what} less than 5 % surer. Reading the ones there are again does more.`;
  const { seconds, strength } = dips[0]!;
  const bath =
    strength === 1 ? "a fresh bath" : `a bath of ${percent(strength)} strength (as much water as liquor)`;
  return `Dip one for ${duration(seconds)} in ${bath}: it makes the doubt of ${what} about ${Math.round(100 * gain)} % smaller.`;
}

const blank = "______";
const people: readonly Column[] = [
  { key: "dip", title: "dip" },
  { key: "strength", title: "strength" },
  { key: "bath", title: "bath" },
  { key: "base", title: "base" },
  ...["L", "a", "b"].map((key) => ({ key, title: key })),
];

const steps: readonly string[] = [
  "Stir, read the thermometer, dip, and count the time from the first touch of the liquor until the part leaves it.",
  "Drain and rinse as in a batch, dry, let the part cool, and read it under the same light each time.",
  "Fill in the CSV (--format csv --out swatches.csv), then add --from swatches.csv to the command of this sheet: it prints the lines to paste.",
];

/** A sheet to dip by; CSV is the blank table that `--from` reads. */
export function sheetReport(sheet: SwatchSheet): Report {
  const all = inOrder(sheet.dips);
  return {
    name: "swatches",
    data: { dye: sheet.dye, dips: sheet.dips, gain: sheet.gain, asked: sheet.asked },
    rows: {
      columns: [
        { key: "time_s", title: "time", digits: (value) => trimmed(value, 1) },
        { key: "strength_pct", title: "strength", digits: (value) => trimmed(value, 1) },
        { key: "bath_C", title: "bath", digits: (value) => trimmed(value, 1) },
        { key: "base", title: "base" },
        ...["L", "a", "b"].map((key) => ({ key, title: key })),
      ],
      rows: all.map(({ seconds, strength, celsius, base }) => [
        seconds,
        seconds === 0 ? null : 100 * strength,
        seconds === 0 ? null : celsius,
        base,
        null,
        null,
        null,
      ]),
    },
    blocks: [
      { kind: "heading", level: 1, text: `Swatches of ${sheet.dye}` },
      paragraph(why(sheet)),
      ...(all.length === 0
        ? []
        : [
            {
              kind: "table" as const,
              table: {
                columns: people,
                rows: all.map(({ seconds, strength, celsius, base }): Cell[] => [
                  seconds === 0 ? "bare part" : duration(seconds),
                  seconds === 0 ? "" : percent(strength),
                  seconds === 0 ? "" : degrees(celsius),
                  base,
                  blank,
                  blank,
                  blank,
                ]),
              },
            },
            { kind: "list" as const, ordered: true, items: steps },
            paragraph(
              "Hot liquor scalds: gloves, goggles, tongs. Local rules and the supplier's data sheet come first.",
            ),
          ]),
    ],
  };
}
