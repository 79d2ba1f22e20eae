import type { Caution } from "../../core/plan/advice/cautions.js";
import { gramsField, gramsPerLField, litresPerKgField, mlField, percentField, textField } from "../fields.js";
import type { Report } from "../report.js";
import { rowTable } from "../row-table.js";
import { gramsSaid, percent, pour, volumeSaid, weigh } from "../words/amounts.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { trimmed } from "../words/digits.js";
import { type Pour, pourTable } from "./pours.js";

/** A recipe on the mass of the goods and what it comes to. */
export interface OnWeightFacts {
  readonly goodsG: number;
  readonly depth: number;
  readonly dyeStrength: number;
  readonly dyeG: number;
  readonly stockGPerL?: number;
  readonly stockMl?: number;
  readonly ratioLPerKg?: number;
  readonly liquorMl?: number;
  readonly waterMl?: number;
  readonly cautions: readonly Caution[];
}

/** An on-weight recipe as a report. */
export function onWeightReport({ cautions, ...facts }: OnWeightFacts): Report {
  const { goodsG, depth, dyeStrength, dyeG, stockGPerL, stockMl, ratioLPerKg, liquorMl, waterMl } = facts;
  const solution =
    stockGPerL === undefined
      ? ""
      : ` of ${trimmed(stockGPerL, 2)} g/L (${trimmed(stockGPerL / 10, 3)} g in 100 mL)`;
  const steps: Pour[] = [
    ...(waterMl === undefined ? [] : [{ what: "water", amount: pour(waterMl) }]),
    stockMl === undefined
      ? { what: "dye", amount: weigh(dyeG) }
      : { what: `stock solution${solution}`, amount: pour(stockMl) },
  ];
  const said = [
    `${percent(depth)} of ${gramsSaid(goodsG)} of goods = ${gramsSaid(goodsG * depth)} of dye`,
    ...(dyeStrength === 1 ? [] : [`; of this lot at ${percent(dyeStrength)} strength ${gramsSaid(dyeG)}`]),
    ...(liquorMl === undefined
      ? []
      : [`; liquor ${volumeSaid(liquorMl / 1000)}, ${trimmed(ratioLPerKg ?? 0, 2)} L per kg`]),
  ].join("");
  return {
    name: "mix",
    data: { kind: "on-weight", ...facts, cautions, warnings: [] },
    rows: withCautions(
      rowTable([
        textField("kind", "on-weight"),
        gramsField("goods", goodsG),
        percentField("depth", depth),
        percentField("dye_strength", dyeStrength),
        gramsField("dye", dyeG),
        ...(stockGPerL === undefined ? [] : [gramsPerLField("stock", stockGPerL)]),
        ...(stockMl === undefined ? [] : [mlField("stock_volume", stockMl)]),
        ...(ratioLPerKg === undefined ? [] : [litresPerKgField("ratio", ratioLPerKg)]),
        ...(liquorMl === undefined ? [] : [mlField("liquor", liquorMl)]),
        ...(waterMl === undefined ? [] : [mlField("water", waterMl)]),
      ]),
      cautions,
    ),
    blocks: [
      { kind: "heading", level: 1, text: `Recipe on ${gramsSaid(goodsG)} of goods` },
      { kind: "paragraph", text: `${said}.` },
      pourTable(steps, "in this order"),
      ...(liquorMl === undefined
        ? []
        : [{ kind: "paragraph", text: `Together ${volumeSaid(liquorMl / 1000)}.` } as const]),
      cautionLine(),
    ],
  };
}
