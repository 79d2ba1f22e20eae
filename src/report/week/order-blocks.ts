import { undyed } from "../../core/model/undyed.js";
import type { Week, WeekOrderRow } from "../../core/week/week-model.js";
import type { Block } from "../report.js";
import { clock } from "../words/times.js";
import { shortDay } from "./words.js";

const byTime = (a: WeekOrderRow, b: WeekOrderRow): number =>
  a.readyDate === b.readyDate ? a.readyMinute - b.readyMinute : a.readyDate < b.readyDate ? -1 : 1;

const late = ({ lateDays }: WeekOrderRow): string => (lateDays === 0 ? "" : `${lateDays} d late`);

/** The days of an order that takes several. */
const days = ({ days: on }: WeekOrderRow): string | null =>
  on.length < 2 ? null : on.map(({ date, quantity }) => `${quantity} on ${shortDay(date)}`).join(", ");

/** When each order is ready, earliest first. */
export function orderBlocks({ orders, batches, startAtMinute }: Week): Block[] {
  const several = batches.length > 1;
  const sorted = [...orders].sort(byTime);
  return [
    { kind: "heading", level: 2, text: "Orders, as they become ready" },
    {
      kind: "table",
      table: {
        columns: [
          { key: "ready", title: "ready", tone: "strong" },
          ...(several ? [{ key: "batch", title: "batch" }] : []),
          { key: "order", title: "#" },
          { key: "good", title: "good" },
          { key: "what", title: "what" },
          { key: "due", title: "due" },
          { key: "late", title: "" },
        ],
        rows: sorted.map((row) => [
          `${shortDay(row.readyDate)} ${clock(row.readyMinute, startAtMinute)}`,
          ...(several ? [row.batch] : []),
          row.order,
          row.quantity,
          `${row.part} ${row.shade === undyed ? "undyed" : row.shade}${row.base === null ? "" : ` on ${row.base}`}`,
          row.due === null ? "" : shortDay(row.due),
          late(row),
        ]),
        notes: sorted.map(days),
      },
    },
  ];
}
