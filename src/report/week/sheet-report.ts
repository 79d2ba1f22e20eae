import type { WeekDay } from "../../core/week/week-model.js";
import { planReport } from "../plan/report.js";
import { type Block, paragraph, type Report } from "../report.js";

const next = paragraph(
  "The next day of this week takes kept baths as they are: the start: lines are for the batch file after the week.",
);

/** The run sheets of one day: as of plan for one person, one after the other for two. */
export function sheetReport({ date, people }: WeekDay): Report {
  const [first, ...others] = people.map(({ plan }) => planReport(plan)) as [Report, ...Report[]];
  if (others.length === 0) return { ...first, blocks: [...first.blocks, next] };
  const all = [first, ...others];
  return {
    name: "week-sheet",
    data: { date, plans: all.map(({ data }) => data) },
    rows: { ...first.rows, rows: all.flatMap(({ rows }) => rows.rows) },
    blocks: [
      ...all.flatMap(({ blocks }, i): Block[] => [
        { kind: "heading", level: 1, text: `Person ${i + 1}` },
        ...blocks,
      ]),
      next,
    ],
  };
}
