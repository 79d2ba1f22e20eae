import { labToLch } from "../../core/colour/cielab.js";
import {
  type CompareReport,
  differenceFormulas,
  type FormulaName,
} from "../../core/colour/difference/compare-colours.js";
import type { GreyScale } from "../../core/colour/difference/grey-scale.js";
import { readingSaid } from "../../core/colour/reading.js";
import type { Unevenness } from "../../core/quality/unevenness.js";
import type { Origin } from "../colour/origin.js";
import { textField } from "../fields.js";
import { type Block, paragraph, type Report } from "../report.js";
import { type Field, rowTable } from "../row-table.js";
import type { Column } from "../table.js";
import { decimals } from "../words/digits.js";
import { differences, furtherDifferences, verdictColumn } from "./added-columns.js";
import { formulaTitles } from "./formula-names.js";
import { type JudgedPart, partFields, partSaid, unevenFields, unevenSaid } from "./part.js";

/** What is known of the two colours beside their differences. */
export interface Found {
  /** Grey-scale grades. */
  readonly change: GreyScale;
  readonly staining: GreyScale;
  /** The sample is the mean of several readings. */
  readonly uneven?: Unevenness;
  /** The sample is a part, the standard its shade. */
  readonly part?: JudgedPart;
}

interface Origins {
  readonly standard: Origin;
  readonly sample: Origin;
}

const sides = ["standard", "sample"] as const;
const four = (value: number): string => decimals(value, 4);
const two = (value: number): string => decimals(value, 2);
const numberColumn = (key: string, title: string): Column => ({ key, title, digits: four, show: two });

/** Sentences on what was carried over, and on what the screen cannot show. */
function notes(report: CompareReport, origins: Origins): string[] {
  return sides.flatMap((side) => {
    const from = origins[side].carriedFrom;
    return [
      ...(from === undefined
        ? []
        : [
            `The ${side} was read under ${readingSaid(from)} and carried over to ${readingSaid(report.reading)} through its smoothest reflectance curve: an estimate.`,
          ]),
      ...(report[side].inGamut ? [] : [`A screen cannot show the ${side}: its hex is only a likeness.`]),
    ];
  });
}

function blocks(report: CompareReport, origins: Origins, found: Found): readonly Block[] {
  const { verdict, deltaE, deltaL, deltaC, deltaH } = report;
  const formulas = Object.keys(differenceFormulas) as FormulaName[];
  const said = notes(report, origins);
  return [
    { kind: "heading", level: 1, text: `Colour difference under ${readingSaid(report.reading)}` },
    {
      kind: "table",
      table: {
        columns: sides.map((side) => ({ key: side, title: side, swatch: true })),
        rows: [sides.map((side) => report[side].hex)],
      },
    },
    {
      kind: "table",
      table: {
        columns: [
          { key: "colour", title: "colour" },
          { key: "given", title: "as given" },
          ...["L", "a", "b", "C", "h"].map((name) => numberColumn(name, name)),
        ],
        rows: sides.map((side) => {
          const [, C, h] = labToLch(report[side].lab);
          return [side, origins[side].given, ...report[side].lab, C, h];
        }),
      },
    },
    {
      kind: "table",
      table: {
        columns: [{ key: "formula", title: "formula" }, numberColumn("deltaE", "difference")],
        rows: formulas.map((name) => [formulaTitles[name], deltaE[name]]),
      },
    },
    {
      kind: "paragraph",
      text: `Sample less standard: ΔL ${two(deltaL)}, ΔC ${two(deltaC)}, ΔH ${two(deltaH)}. Grey-scale grade for change in colour: ${found.change.grade}, for staining: ${found.staining.grade}.`,
    },
    ...(found.uneven === undefined ? [] : [paragraph(unevenSaid(found.uneven))]),
    ...(said.length === 0 ? [] : [{ kind: "list", items: said } as const]),
    ...(verdict === undefined
      ? []
      : [
          {
            kind: "paragraph",
            text: `${verdict.pass ? "Pass" : "Fail"}: ${formulaTitles[verdict.formula]} ${four(deltaE[verdict.formula])} is ${verdict.pass ? "within" : "over"} the tolerance of ${verdict.tolerance}.`,
          } as const,
        ]),
    ...(found.part === undefined ? [] : partSaid(found.part, verdict).map(paragraph)),
  ];
}

function row(report: CompareReport, origins: Origins, found: Found): Field[] {
  const labField = (side: (typeof sides)[number], n: 1 | 2): Field[] =>
    report[side].lab.map((value, i) => [numberColumn(`${"Lab"[i]}${n}`, `${"Lab"[i]}${n}`), value]);
  const carried = ({ carriedFrom }: Origin): string | null =>
    carriedFrom === undefined ? null : readingSaid(carriedFrom);
  return [
    textField("standard", origins.standard.given),
    textField("sample", origins.sample.given),
    textField("reading", readingSaid(report.reading)),
    textField("standard_carried_from", carried(origins.standard)),
    textField("sample_carried_from", carried(origins.sample)),
    ...labField("standard", 1),
    ...labField("sample", 2),
    textField("hex1", report.standard.hex),
    textField("hex2", report.sample.hex),
    ...differences.map(({ column, of }): Field => [column, of(report)]),
    textField("grey_scale_change", found.change.grade),
    ...(report.verdict === undefined
      ? []
      : [[verdictColumn, report.verdict.pass ? "pass" : "fail"] as const satisfies Field]),
    ...furtherDifferences.map(({ column, of }): Field => [column, of(report)]),
    textField("grey_scale_staining", found.staining.grade),
    ...(found.uneven === undefined ? [] : unevenFields(found.uneven)),
    ...(found.part === undefined ? [] : partFields(found.part)),
  ];
}

/** Two colours compared, for every format. */
export function compareReport(compared: CompareReport, origins: Origins, found: Found): Report {
  const { standard, sample, reading, ...others } = compared;
  const { change, staining, uneven, part } = found;
  return {
    name: "compare",
    data: {
      reading,
      standard: { ...origins.standard, ...standard },
      sample: { ...origins.sample, ...sample },
      ...others,
      greyScaleChange: change,
      greyScaleStaining: staining,
      ...(uneven && { unevenness: uneven }),
      ...(part && { part }),
    },
    rows: rowTable(row(compared, origins, found)),
    blocks: blocks(compared, origins, found),
  };
}
