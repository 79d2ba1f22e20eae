import type { ToOrder, Week } from "../../core/week/week-model.js";
import { type Block, paragraph } from "../report.js";
import { pour, weigh } from "../words/amounts.js";
import { shortDay } from "./words.js";

const amount = ({ unit }: ToOrder, value: number): string =>
  unit === "mL" ? pour(value) : unit === "g" ? weigh(value) : String(Math.ceil(value - 1e-9));

const named = ({ kind, name, base }: ToOrder): string =>
  kind === "dye" ? name : `undyed ${name}${base === null ? "" : ` on ${base}`}`;

/** By when to order what is short. */
function orderBy({ orderBy: day, stock, short, leadTimeDays }: ToOrder): string {
  if (stock === null) return "stock: not given";
  if (short === 0) return "";
  if (day !== null) return `by ${shortDay(day)}`;
  return leadTimeDays === null ? "no leadTime: given" : "";
}

/** What the week uses beside what is on the shelf, and by when to order the rest. */
export function materialBlocks({ toOrder }: Week): Block[] {
  if (toOrder.length === 0) return [];
  const short = toOrder.some((one) => one.short > 0);
  return [
    { kind: "heading", level: 2, text: "Dyes and undyed parts" },
    {
      kind: "table",
      table: {
        columns: [
          { key: "what", title: "what" },
          { key: "used", title: "used", align: "right" },
          { key: "stock", title: "stock", align: "right" },
          { key: "short", title: "short", align: "right" },
          { key: "from", title: "from" },
          { key: "order", title: "order" },
        ],
        rows: toOrder.map((one) => [
          named(one),
          amount(one, one.used),
          one.stock === null ? "" : amount(one, one.stock),
          one.short === 0 ? "" : amount(one, one.short),
          one.shortFrom === null ? "" : shortDay(one.shortFrom),
          orderBy(one),
        ]),
      },
    },
    ...(short
      ? [paragraph("Order: the last day on which what is ordered still arrives in time, by its leadTime.")]
      : []),
  ];
}
