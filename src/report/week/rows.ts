import type { Week, WeekOrderRow } from "../../core/week/week-model.js";
import { countColumn, textColumn } from "../cost/columns.js";
import type { Table } from "../table.js";
import { clock } from "../words/times.js";

/** When an order is ready, as scripts read it: ISO 8601, local time. */
export const readyAt = ({ readyDate, readyMinute }: WeekOrderRow, startAtMinute: number): string =>
  `${readyDate}T${clock(readyMinute, startAtMinute)}`;

/** Orders by day as a table for scripts: a row an order and day on which some of it is made. */
export function weekTable({ orders, startAtMinute }: Pick<Week, "orders" | "startAtMinute">): Table {
  return {
    columns: [
      textColumn("batch"),
      countColumn("order"),
      ...["part", "shade", "base"].map(textColumn),
      countColumn("quantity"),
      textColumn("day"),
      countColumn("parts_on_day"),
      textColumn("ready"),
      textColumn("due"),
      { key: "late_d", title: "late", digits: String },
    ],
    rows: orders.flatMap((row) =>
      row.days.map(({ date, quantity }) => [
        row.batch,
        row.order,
        row.part,
        row.shade,
        row.base,
        row.quantity,
        date,
        quantity,
        readyAt(row, startAtMinute),
        row.due,
        row.lateDays,
      ]),
    ),
  };
}
