import { restsThatMatter } from "../../core/cost/assumed-shares.js";
import { costLines, lineRecords } from "../../core/cost/line/cost-lines.js";
import type { CostSheet } from "../../core/cost/line/cost-sheet.js";
import type { Fault } from "../../core/fault.js";
import { exactSumOf } from "../../core/maths/exact-sum.js";
import type { RestsOn } from "../../core/model/rests-on.js";
import { undyed } from "../../core/model/undyed.js";
import type { Plan } from "../../core/plan/plan-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import { type Block, paragraph, titledList } from "../report.js";
import type { Cell } from "../table.js";
import { assumedBlocks, footnote, mark, notCountedBlocks } from "../words/assumed.js";
import { lifeEnds } from "../words/life-ends.js";
import { money, moneyDigits } from "../words/money.js";
import { priceTitle } from "../words/price.js";
import { sentence } from "../words/sentence.js";
import { bathBlocks } from "./bath-blocks.js";
import { clockBlocks } from "./clock.js";

const minutes = (value: number): string => duration(Math.ceil(value - 1e-9) * 60);

/** The assumptions that carry enough of the cost to be marked. */
const restsOf = ({ totals }: Plan): RestsOn => restsThatMatter(totals.restsOnAssumed, totals.assumedShares);

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
  return `${started}, ${totals.loads} ${totals.loads === 1 ? "load" : "loads"}, ${plan.baths.length} ${plan.baths.length === 1 ? "bath" : "baths"}; ${minutes(totals.minutes)} from start to end, ${minutes(totals.operatorMinutes)} of it hands on; ${totals.kWh.toFixed(2)} kWh; ${cost}.${mark(restsOf(plan))}`;
}

/** Lines under this share of the cost are printed together [-]. */
const smallShare = 0.01;

/** The lines of a cost sheet; the small ones together, where there are several. */
function lineRows(lines: CostSheet, cost: number, good: number): Cell[][] {
  const row = (title: string, amount: number): Cell[] => [
    title,
    amount,
    amount / good,
    cost > 0 ? (100 * amount) / cost : 0,
  ];
  const used = costLines.filter((line) => lines[line] !== 0);
  const small = used.filter((line) => lines[line] < smallShare * cost);
  const together = small.length > 1 ? small : [];
  return [
    ...used
      .filter((line) => !together.includes(line))
      .map((line) => row(lineRecords[line].title, lines[line])),
    ...(together.length === 0
      ? []
      : [
          row(
            together.map((line) => lineRecords[line].title).join(", "),
            exactSumOf(together, (line) => lines[line]),
          ),
        ]),
  ];
}

function costBlocks(plan: Plan): Block[] {
  const { lines, cost, good } = plan.totals;
  if (lines === null || cost === null) return [];
  const digits = moneyDigits(plan.currency);
  const unit = plan.currency ?? "";
  const priced = plan.orders.some((order) => order.price !== undefined);
  return [
    { kind: "heading", level: 2, text: `Costs in ${unit}${mark(restsOf(plan))}` },
    {
      kind: "table",
      table: {
        columns: [
          { key: "order", title: "#" },
          { key: "what", title: "what" },
          { key: "good", title: "good" },
          { key: "started", title: "started" },
          { key: "per_part", title: "per part", digits, tone: "strong" },
          ...(priced ? [{ key: "price", title: priceTitle(plan.orders), digits }] : []),
          { key: "total", title: "total", digits },
        ],
        rows: plan.orders.map((order) => [
          order.order,
          `${order.part} ${order.shade === undyed ? "undyed" : order.shade}${order.base === null ? "" : ` on ${order.base}`}`,
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
        rows: [...lineRows(lines, cost, good), ["all", cost, cost / good, 100]],
      },
    },
    ...notCountedBlocks(plan.notCounted),
  ];
}

/** How long the baths last, in a line that says where more is. */
function lifeLine({ baths }: Plan): string {
  const lives = baths.map(({ dye, life }) => {
    const { loads, parts, endedBy, restsOnAssumed } = life;
    const assumed = restsOnAssumed.length > 0 && endedBy !== "shelf-life" ? "; assumed" : "";
    return `${dye} ${endedBy === "load-limit" ? "over " : ""}${loads} loads, ${parts} parts (${lifeEnds[endedBy].short}${assumed})`;
  });
  return `A fresh bath lasts for this work: ${lives.join(", ")}. More: dipwright bath.`;
}

const faultText = ({ message, help }: Fault): string =>
  [message, ...(help === undefined ? [] : [help])].map(sentence).join(" ");

/** The run sheet for people: per bath what to pour, dip and top up, then the clock, costs and cautions. */
export function planBlocks(plan: Plan): Block[] {
  return [
    {
      kind: "heading",
      level: 1,
      text: `Run sheet ${plan.batch}${plan.date === null ? "" : `, ${plan.date}`}`,
    },
    paragraph(summary(plan)),
    ...[footnote(restsOf(plan))].flatMap((text) => (text === null ? [] : [paragraph(text)])),
    ...plan.baths.flatMap((bath, index) => bathBlocks(plan, bath, index)),
    ...clockBlocks(plan),
    ...costBlocks(plan),
    ...(plan.baths.length > 0 ? [paragraph(lifeLine(plan))] : []),
    ...titledList("Over the limit", plan.exceeded.map(faultText)),
    ...titledList("Warnings", plan.warnings.map(faultText)),
    ...assumedBlocks(plan.assumptions),
    ...titledList(
      "Cautions",
      plan.cautions.map(({ text }) => text),
    ),
  ];
}
