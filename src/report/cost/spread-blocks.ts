import type { Percentiles } from "../../core/cost/spread/spread.js";
import type { Block } from "../report.js";
import type { Table } from "../table.js";
import { percent } from "../words/amounts.js";
import { digitsSeconds } from "../words/digits.js";
import { money, moneyDigits } from "../words/money.js";
import { countColumn, textColumn } from "./columns.js";
import type { CostEntry } from "./entry.js";

/** Inputs that are named; what comes after them moves little. */
const named = 5;
/** A share of less cannot be told from none in 1000 draws. */
const leastShare = 0.005;

/** "1600 to 1750", or one number where both ends look the same. */
function range(of: Percentiles | null | undefined, digits: (value: number) => string): string | null {
  if (!of) return null;
  const [from, to] = [digits(of.p10), digits(of.p90)];
  return from === to ? from : `${from} to ${to}`;
}

function table(entries: readonly CostEntry[], currency: string | null): Table {
  const digits = moneyDigits(currency);
  return {
    columns: [
      textColumn("batch"),
      countColumn("order"),
      textColumn("part"),
      textColumn("shade"),
      ...["P10", "P50", "P90"].map((title) => ({ key: title, title, digits })),
      { key: "dip", title: "dip", unit: "s", align: "right" as const },
    ],
    rows: entries.flatMap(({ orders, spread }) =>
      orders.map((order, i) => {
        const cost = spread?.outputs.costPerPart?.[i];
        const dip = spread?.outputs.dipSeconds?.[i];
        return [
          order.batch,
          order.order,
          order.part,
          order.shade,
          cost?.p10 ?? null,
          cost?.p50 ?? null,
          cost?.p90 ?? null,
          range(dip, digitsSeconds),
        ];
      }),
    ),
  };
}

/** What moves one batch's cost, how long its baths last, and draws that failed, in words. */
function notes({ batch, baths, spread }: CostEntry, currency: string | null): string[] {
  if (!spread) return [];
  const { ranking, failed, draws, outputs } = spread;
  const strong = ranking.filter(({ share }) => share >= leastShare).slice(0, named);
  const moved = strong.map(
    ({ path, share, swing, assumed }) =>
      `${path.join(".")}${assumed ? " (assumed)" : ""} ${percent(share)} of the variation, ${swing < 0 ? "-" : "+"}${money(Math.abs(swing), currency)} from its P10 to its P90`,
  );
  return [
    ...(ranking.length === 0 ? [`${batch}: no input carries ± and none is assumed, so nothing varies`] : []),
    ...(moved.length > 0 ? [`${batch}, what moves the total most: ${moved.join("; ")}`] : []),
    ...baths.map(
      ({ tank, dye }, i) =>
        `${batch}, the bath of ${dye} in ${tank} lasts ${range(outputs.lifeParts?.[i], digitsSeconds) ?? "?"} parts`,
    ),
    ...(failed > 0 ? [`${batch}: ${failed} of ${draws} draws cannot be dyed and are left out`] : []),
  ];
}

/** How sure the costs are, for people. */
export const spreadBlocks = (entries: readonly CostEntry[], currency: string | null): Block[] => {
  const drawn = entries.filter(({ spread }) => spread !== undefined);
  if (drawn.length === 0) return [];
  return [
    { kind: "heading", level: 2, text: `How sure: cost of a good part in ${drawn[0]!.spread!.draws} draws` },
    { kind: "table", table: table(drawn, currency) },
    { kind: "list", items: drawn.flatMap((entry) => notes(entry, currency)).map((note) => `${note}.`) },
  ];
};
