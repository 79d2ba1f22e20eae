import type { PersonDay, Week } from "../../core/week/week-model.js";
import { paragraph, type Report } from "../report.js";
import { assumedBlocks, assumedRecords } from "../words/assumed.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { dayBlocks } from "./day-blocks.js";
import { jugBlocks } from "./jug-blocks.js";
import { materialBlocks } from "./material-blocks.js";
import { orderBlocks } from "./order-blocks.js";
import { readyAt, type WeekRows, weekTables } from "./rows.js";
import { ruleBlocks, summary } from "./rule-blocks.js";
import { daySaid } from "./words.js";

/** What one person does on a day, without the costs of the plan that it comes from. */
const personRecord = ({ plan }: PersonDay): Record<string, unknown> => ({
  minutes: plan.totals.minutes,
  operatorMinutes: plan.totals.operatorMinutes,
  dryer: plan.dryer,
  baths: plan.baths.map(({ bath, tank, dye, start, makeUp, startTopUp, loads, carryOver }) => ({
    bath,
    tank,
    dye,
    start,
    makeUp,
    startTopUp,
    loads,
    carryOver,
  })),
  timeline: plan.timeline,
});

/** The week in every format. */
export function weekReport(week: Week, rows: WeekRows): Report {
  const { wish, startAtMinute, batches, rule, length, days, toOrder, assumptions, cautions } = week;
  const orders = week.orders.map((row) => ({ ...row, ready: readyAt(row, startAtMinute) }));
  return {
    name: "week",
    data: {
      ...wish,
      startAtMinute,
      batches,
      rule,
      length,
      orders,
      days: days.map(({ date, minutes, people }) => ({ date, minutes, people: people.map(personRecord) })),
      baths: week.baths,
      toOrder,
      assumptions: assumedRecords(assumptions),
      cautions,
    },
    rows: withCautions(weekTables[rows](week), cautions),
    blocks: [
      {
        kind: "heading",
        level: 1,
        text: `Week from ${daySaid(wish.from)}: ${batches.join(", ")}`,
      },
      paragraph(summary(week)),
      ...orderBlocks(week),
      ...dayBlocks(week),
      ...materialBlocks(week),
      ...jugBlocks(week),
      ...ruleBlocks(week),
      ...assumedBlocks(assumptions),
      cautionLine(),
    ],
  };
}
