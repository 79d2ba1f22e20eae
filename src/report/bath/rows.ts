import type { PlanLife } from "../../core/plan/plan-model.js";
import type { BatchWear, BathWear } from "../../core/plan/wear-model.js";
import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { type DyeKind, dyeKinds, kindsOfDye } from "../../core/quantity/dye/dye-kinds.js";
import type { Cell, Column, Table } from "../table.js";
import { restsInCell } from "../words/assumed.js";
import { decimals, significant } from "../words/digits.js";
import { fineMoney, moneyDigits } from "../words/money.js";

/** A column of the table of lives: its header, and what it holds. */
interface LifeColumn extends Column {
  readonly of: (wear: BatchWear, bath: BathWear, life: PlanLife) => Cell;
}

const text = (key: string, of: LifeColumn["of"]): LifeColumn => ({ key, title: key, of });
const number = (key: string, places: number, of: LifeColumn["of"]): LifeColumn => ({
  key,
  title: key,
  digits: (value) => decimals(value, places),
  of,
});
const yes = (is: boolean): string => (is ? "yes" : "no");

/** What a life takes of one kind of dye, per part or dm2. */
const dyeColumn = (kind: DyeKind, per: "perPart" | "perDm2"): LifeColumn => {
  const { what, unit } = dyeKinds[kind];
  return {
    ...text(`${what}_${unit}_per_${per === "perPart" ? "part" : "dm2"}`, (_w, _b, life) =>
      kindWith(life, per) === kind ? figureOfDye(life, per) : null,
    ),
    digits: (value) => significant(value, 4),
  };
};

const moneyText = (amount: number, currency: string | null): string => moneyDigits(currency)(amount);

const money = (
  currency: string | null,
  name: string,
  digits: (amount: number, currency: string | null) => string,
  of: LifeColumn["of"],
): LifeColumn => ({
  ...text(currency === null ? name : `${name}_${currency}`, of),
  digits: (value) => digits(value, currency),
});

const columns = (currency: string | null): readonly LifeColumn[] => [
  text("batch", (wear) => wear.batch),
  text("date", (wear) => wear.date),
  text("tank", (_w, bath) => bath.tank),
  text("dye", (_w, bath) => bath.dye),
  number("bath_C", 1, (_w, bath) => bath.celsius),
  number("volume_L", 2, (_w, bath) => bath.volumeL),
  text("top_up", (_w, _b, life) => life.rule),
  text("own_rule", (_w, bath, life) => yes(bath.topUpRule === life.rule)),
  text("cheapest", (_w, bath, life) => yes(bath.cheapestRule === life.rule)),
  number("loads", 0, (_w, _b, life) => life.loads),
  number("parts", 0, (_w, _b, life) => life.parts),
  number("area_dm2", 2, (_w, _b, life) => life.areaDm2),
  number("days", 1, (_w, _b, life) => life.days),
  text("ended_by", (_w, _b, life) => life.endedBy),
  ...kindsOfDye.flatMap((kind) => [dyeColumn(kind, "perPart"), dyeColumn(kind, "perDm2")]),
  money(currency, "cost_per_part", fineMoney, (_w, _b, life) => life.costPerPart),
  money(currency, "cost", moneyText, (_w, _b, life) => life.cost),
  number("on_parts_pct", 2, (_w, _b, life) => 100 * life.dyeFate.onPartsShare),
  number("rinsed_pct", 2, (_w, _b, life) => 100 * life.dyeFate.rinsedShare),
  number("left_pct", 2, (_w, _b, life) => 100 * life.dyeFate.leftShare),
  text("rests_on_assumed", (_w, _b, life) => restsInCell(life.restsOnAssumed)),
];

/** One row a bath and rule, for spreadsheets. */
export function wearRows(wear: BatchWear): Table {
  const all = columns(wear.currency);
  return {
    columns: all,
    rows: wear.baths.flatMap((bath) => bath.lives.map((life) => all.map(({ of }) => of(wear, bath, life)))),
  };
}
