import type { Offer, PriceRow } from "../../core/offer/offer-model.js";
import { dyeFigures } from "../../core/quantity/dye/dye-figures.js";
import { countColumn, moneyColumn, textColumn } from "../cost/columns.js";
import type { Column, Table } from "../table.js";
import { decimals, digitsPercent, significant } from "../words/digits.js";

const minutes = (name: string): Column => ({
  key: `${name}_min`,
  title: name.replaceAll("_", " "),
  digits: (value) => decimals(value, 2),
});
const dye = (key: string): Column => ({ key, title: "dye", digits: (value) => significant(value, 3) });
const yes = (is: boolean): string => (is ? "yes" : "no");

/** The price list as a table for scripts and shops: a row a part, colour, base and quantity. */
export function priceTable({ rows, currency }: Pick<Offer, "rows" | "currency">): Table {
  const money = moneyColumn(currency);
  return {
    columns: [
      ...["part", "shade", "base"].map(textColumn),
      countColumn("quantity"),
      money("price"),
      money("cost_per_part"),
      money("profit_per_part"),
      { key: "margin_percent", title: "margin", digits: digitsPercent },
      money("price_fresh_bath"),
      money("cost_per_part_fresh_bath"),
      minutes("hands_on"),
      minutes("tank"),
      minutes("dryer"),
      money("profit_per_hour"),
      money("profit_per_tank_hour"),
      countColumn("pays_from_parts"),
      countColumn("parts_per_day"),
      dye("concentrate_mL_per_part"),
      dye("powder_g_per_part"),
      ...["dye", "reachable", "estimated"].map(textColumn),
    ],
    rows: rows.map((row) => [
      row.part,
      row.shade,
      row.base,
      row.quantity,
      row.price,
      row.costPerPart,
      row.profitPerPart,
      row.margin,
      row.freshBath?.price ?? null,
      row.freshBath?.costPerPart ?? null,
      row.handsOnMinutes,
      row.tankMinutes,
      row.dryerMinutes,
      row.profitPerHour,
      row.profitPerTankHour,
      row.paysFromParts,
      row.partsPerDay === null ? null : Math.floor(row.partsPerDay),
      row.dyeKind === "liquid" ? row.dyePerPart : null,
      row.dyeKind === "powder" ? row.dyePerPart : null,
      row.dye,
      yes(row.reachable),
      yes(row.estimated),
    ]),
  };
}

/** A row as JSON gives it: the amount of dye under a key that names its unit. */
export const rowRecord = ({ dyePerPart, dyeKind, ...row }: PriceRow): Record<string, unknown> => ({
  ...row,
  ...(dyeKind === null ? {} : dyeFigures(dyeKind, { perPart: dyePerPart })),
});
