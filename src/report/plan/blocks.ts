import { costLines, lineRecords } from "../../core/cost/line/cost-lines.js";
import type { Fault } from "../../core/fault.js";
import type { Plan } from "../../core/plan/plan-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Block } from "../report.js";
import { footnote, mark } from "../words/assumed.js";
import { money, moneyDigits } from "../words/money.js";
import { priceTitle } from "../words/price.js";
import { bathBlocks } from "./bath-blocks.js";
import { clockBlocks } from "./clock.js";

const minutes = (value: number): string => duration(Math.ceil(value - 1e-9) * 60);

function summary(plan: Plan): string {
  const { totals } = plan;
  const cost =
    totals.cost === null
      ? "no rates or prices given, so no costs"
      : `${money(totals.cost, plan.currency)} in all`;
  const started =
    totals.started === totals.good
      ? `${totals.good} parts`
      : `${totals.started} parts started for ${totals.good} good ones`;
  return `${started}, ${totals.loads} ${totals.loads === 1 ? "load" : "loads"}, ${plan.baths.length} ${plan.baths.length === 1 ? "bath" : "baths"}; ${minutes(totals.minutes)} from start to end, ${minutes(totals.operatorMinutes)} of it hands on; ${totals.kWh.toFixed(2)} kWh; ${cost}.${mark(totals.restsOnAssumed)}`;
}

function costBlocks(plan: Plan): Block[] {
  const { lines, cost, good } = plan.totals;
  if (lines === null || cost === null) return [];
  const digits = moneyDigits(plan.currency);
  const unit = plan.currency ?? "";
  const priced = plan.orders.some((order) => order.price !== undefined);
  return [
    { kind: "heading", level: 1, text: `Costs in ${unit}${mark(plan.totals.restsOnAssumed)}` },
    {
      kind: "table",
      table: {
        columns: [
          { key: "order", title: "order" },
          { key: "part", title: "part" },
          { key: "shade", title: "shade" },
          { key: "good", title: "good" },
          { key: "started", title: "started" },
          { key: "per_part", title: "per good part", digits, tone: "strong" },
          ...(priced ? [{ key: "price", title: priceTitle(plan.orders), digits }] : []),
          { key: "total", title: "total", digits },
        ],
        rows: plan.orders.map((order) => [
          order.order,
          order.part,
          order.base === null ? order.shade : `${order.shade} on ${order.base}`,
          order.quantity,
          order.started,
          order.costPerPart,
          ...(priced ? [order.price ?? null] : []),
          order.total,
        ]),
      },
    },
    {
      kind: "table",
      table: {
        columns: [
          { key: "line", title: "line" },
          { key: "total", title: "total", digits },
          { key: "per_part", title: "per good part", digits },
          { key: "share", title: "share %", digits: (value) => value.toFixed(1) },
        ],
        rows: costLines
          .map((line) => [
            lineRecords[line].title,
            lines[line],
            lines[line] / good,
            cost > 0 ? (100 * lines[line]) / cost : 0,
          ])
          .concat([["all", cost, cost / good, 100]]),
      },
    },
    ...(plan.notCounted.length > 0
      ? [
          {
            kind: "paragraph" as const,
            text: `Not given, so counted as nothing: ${plan.notCounted.join("; ")}.`,
          },
        ]
      : []),
  ];
}

const titled = (text: string, items: readonly string[]): Block[] =>
  items.length === 0
    ? []
    : [
        { kind: "heading", level: 1, text },
        { kind: "list", items },
      ];

const faultText = ({ message, help }: Fault): string =>
  help === undefined ? `${message}.` : `${message}: ${help}.`;

/** The run sheet for people: per bath what to pour, dip and top up, then the clock, costs and cautions. */
export function planBlocks(plan: Plan): Block[] {
  return [
    {
      kind: "heading",
      level: 1,
      text: `Run sheet ${plan.batch}${plan.date === null ? "" : `, ${plan.date}`}`,
    },
    { kind: "paragraph", text: summary(plan) },
    ...(footnote(plan.restsOnAssumed) === null
      ? []
      : [{ kind: "paragraph" as const, text: footnote(plan.restsOnAssumed)! }]),
    ...plan.baths.flatMap((bath, index) => bathBlocks(plan, bath, index)),
    ...clockBlocks(plan),
    ...costBlocks(plan),
    ...titled("Over the limit", plan.exceeded.map(faultText)),
    ...titled("Warnings", plan.warnings.map(faultText)),
    ...titled(
      "Assumed, not measured",
      plan.assumptions.map(({ message }) => `${message}.`),
    ),
    ...titled(
      "Cautions",
      plan.cautions.map(({ text }) => text),
    ),
  ];
}
