import type { Plan, PlanOrder } from "../../core/batch/plan-model.js";
import { costLines } from "../../core/cost/items.js";
import { decimals } from "../digits.js";
import { moneyDigits } from "../money.js";
import type { Report } from "../report.js";
import type { Column, Table } from "../table.js";

const whole = (value: number): string => decimals(value, 0);

/** One row an order over all plans; money columns name the currency, which all plans share. */
export function costRows(plans: readonly Plan[]): Table {
  const currency = plans.find((plan) => plan.currency !== null)?.currency ?? null;
  const digits = moneyDigits(currency);
  const money = (name: string): Column => ({
    key: currency === null ? name : `${name}_${currency}`,
    title: name.replaceAll("_", " "),
    digits,
  });
  const text = (key: string): Column => ({ key, title: key });
  const count = (key: string): Column => ({ key, title: key, digits: whole });
  const columns = [
    ...["batch", "date"].map(text),
    count("order"),
    ...["part", "shade", "base"].map(text),
    ...["quantity", "started"].map(count),
    ...["cost_per_part", "total", ...costLines, "price"].map(money),
  ];
  const row = (plan: Plan, order: PlanOrder) => [
    plan.batch,
    plan.date,
    order.order,
    order.part,
    order.shade,
    order.base,
    order.quantity,
    order.started,
    order.costPerPart,
    order.total,
    ...costLines.map((line) => order.lines?.[line] ?? null),
    order.price ?? null,
  ];
  return { columns, rows: plans.flatMap((plan) => plan.orders.map((order) => row(plan, order))) };
}

/** What each order costs, over one or many batches. */
export function costReport(plans: readonly Plan[]): Report {
  const rows = costRows(plans);
  const narrow = ["batch", "order", "part", "shade", "quantity", "cost per part", "total", "price"];
  const kept = rows.columns.flatMap((column, i) => (narrow.includes(column.title) ? [i] : []));
  const short: Table = {
    columns: kept.map((i) => rows.columns[i]!),
    rows: rows.rows.map((row) => kept.map((i) => row[i]!)),
  };
  const currency = plans.find((plan) => plan.currency !== null)?.currency;
  const uncounted = [...new Set(plans.flatMap((plan) => plan.notCounted))];
  const assumed = [...new Set(plans.flatMap((plan) => plan.assumptions.map(({ message }) => message)))];
  return {
    name: "cost",
    data: {
      currency: currency ?? null,
      orders: plans.flatMap((plan) =>
        plan.orders.map((order) => ({ batch: plan.batch, date: plan.date, ...order })),
      ),
      batches: plans.map(({ batch, date, totals, notCounted, assumptions, warnings, exceeded }) => ({
        batch,
        date,
        totals,
        notCounted,
        assumptions,
        warnings,
        exceeded,
      })),
    },
    rows,
    blocks: [
      { kind: "heading", level: 1, text: currency === undefined ? "Costs" : `Costs in ${currency}` },
      { kind: "table", table: short },
      ...(uncounted.length > 0
        ? [{ kind: "paragraph" as const, text: `Not given, so counted as nothing: ${uncounted.join("; ")}.` }]
        : []),
      ...(assumed.length > 0
        ? [
            { kind: "heading" as const, level: 2 as const, text: "Assumed, not measured" },
            { kind: "list" as const, items: assumed.map((message) => `${message}.`) },
          ]
        : []),
    ],
  };
}
