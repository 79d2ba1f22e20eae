import type { Week, WeekOrderRow } from "../../core/week/week-model.js";
import { countColumn, textColumn } from "../cost/columns.js";
import type { Column, Table } from "../table.js";
import { decimals, digitsL, digitsPercent, trimmed } from "../words/digits.js";
import { clock } from "../words/times.js";

/** When an order is ready, as scripts read it: ISO 8601, local time. */
export const readyAt = ({ readyDate, readyMinute }: WeekOrderRow, startAtMinute: number): string =>
  `${readyDate}T${clock(readyMinute, startAtMinute)}`;

const days = (key: string): Column => ({
  key: `${key}_d`,
  title: key,
  digits: (value) => decimals(value, 1),
});
const share = (key: string): Column => ({ key: `${key}_percent`, title: key, digits: digitsPercent });
const litres = (key: string): Column => ({ key: `${key}_L`, title: key, digits: digitsL });
const amount = (key: string): Column => ({ key, title: key, digits: (value) => trimmed(value, 1) });

/** A row an order and day on which some of it is made. */
const orderTable = ({ orders, startAtMinute }: Week): Table => ({
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
});

/** A row a bath and day, as it starts and as it is poured back. */
const bathTable = ({ baths }: Week): Table => ({
  columns: [
    ...["day", "tank", "dye", "start"].map(textColumn),
    share("strength"),
    litres("volume"),
    days("age"),
    share("strength_after"),
    litres("volume_after"),
  ],
  rows: baths.map(({ date, tank, dye, start, strengthAfter, volumeAfterL }) => [
    date,
    tank,
    dye,
    start.kind,
    ...(start.kind === "fresh" ? [null, null, null] : [start.strength, start.volumeL, start.ageDays]),
    strengthAfter,
    volumeAfterL,
  ]),
});

/** A row a dye or undyed part, and by when to order it. */
const stockTable = ({ toOrder }: Week): Table => ({
  columns: [
    ...["kind", "name", "base", "unit"].map(textColumn),
    ...["used", "stock", "short"].map(amount),
    textColumn("short_from"),
    days("lead_time"),
    textColumn("order_by"),
  ],
  rows: toOrder.map((one) => [
    one.kind,
    one.name,
    one.base,
    one.unit,
    one.used,
    one.stock,
    one.short,
    one.shortFrom,
    one.leadTimeDays,
    one.orderBy,
  ]),
});

/** What the rows of a table for scripts can be. */
export const weekTables = { orders: orderTable, baths: bathTable, stock: stockTable } as const;
export type WeekRows = keyof typeof weekTables;
