import { exactSumOf } from "../../core/maths/exact-sum.js";
import type { PlanBath } from "../../core/plan/plan-model.js";
import type { PersonDay, Week, WeekBath, WeekDay } from "../../core/week/week-model.js";
import type { Block } from "../report.js";
import type { Cell } from "../table.js";
import { litres, percent } from "../words/amounts.js";
import { trimmed } from "../words/digits.js";
import { clock } from "../words/times.js";
import { daySaid, hoursSaid } from "./words.js";

/** How a bath starts; the jug is measured cold, as on the run sheet of the day. */
function startSaid({ start, renewed }: WeekBath, { makeUp }: PlanBath): string {
  if (start.kind === "fresh") return renewed ? "fresh, the old one is past its shelf life" : "fresh";
  return `kept ${percent(start.strength)}, ${litres(makeUp.volumeColdL)} cold, ${trimmed(start.ageDays, 1)} d`;
}

/** What goes back into the jug. */
const endSaid = ({ carryOver }: PlanBath): string =>
  carryOver === null ? "dumped" : `${percent(carryOver.strength)}, ${litres(carryOver.coldVolumeL)} cold`;

/** Which parts a bath dyes, by order. */
const partsSaid = ({ loads }: PlanBath): string =>
  [...new Set(loads.map(({ order }) => order))]
    .map((order) => {
      const own = loads.filter((load) => load.order === order);
      const { part, shade } = own[0]!;
      return `${exactSumOf(own, ({ parts }) => parts)} ${part} ${shade}`;
    })
    .join(", ");

/** When a bath is worked: from its set-up to the end of its clean-up. */
function stretchOf({ plan }: PersonDay, { bath }: PlanBath, start: number): [string, string] {
  const own = plan.timeline.filter((entry) => entry.bath === bath);
  return [
    clock(
      own.reduce((first, one) => Math.min(first, one.startMinute), own[0]!.startMinute),
      start,
    ),
    clock(
      own.reduce((last, one) => Math.max(last, one.endMinute), 0),
      start,
    ),
  ];
}

/** A bath as a row, and the parts that it dyes as a note under it. */
function bathRow(
  week: Week,
  { date, people }: WeekDay,
  person: PersonDay,
  bath: PlanBath,
): { readonly row: Cell[]; readonly note: string } {
  const book = week.baths.find((one) => one.date === date && one.tank === bath.tank && one.dye === bath.dye)!;
  const own = stretchOf(person, bath, week.startAtMinute);
  return {
    row: [
      ...own,
      ...(people.length > 1 ? [people.indexOf(person) + 1] : []),
      bath.tank,
      bath.dye,
      startSaid(book, bath),
      bath.loads.length,
      endSaid(bath),
    ],
    note: partsSaid(bath),
  };
}

/** Each day: its baths as they start and end, loads and parts, who works them, and how long it is. */
export const dayBlocks = (week: Week): Block[] =>
  week.days.flatMap((day): Block[] => {
    const { date, minutes, people } = day;
    const baths = people.flatMap((person) =>
      person.plan.baths.map((bath) => bathRow(week, day, person, bath)),
    );
    const end = clock(minutes, week.startAtMinute);
    const hands = people.map(({ plan }) => hoursSaid(plan.totals.operatorMinutes)).join(" and ");
    return [
      {
        kind: "heading",
        level: 2,
        text: `${daySaid(date)}, ${clock(0, week.startAtMinute)} to ${end}, hands on ${hands}`,
      },
      {
        kind: "table",
        table: {
          columns: [
            { key: "from", title: "from", tone: "strong" },
            { key: "to", title: "to" },
            ...(people.length > 1 ? [{ key: "person", title: "who" }] : []),
            { key: "tank", title: "tank" },
            { key: "dye", title: "dye" },
            { key: "start", title: "bath" },
            { key: "loads", title: "loads" },
            { key: "end", title: "poured back" },
          ],
          rows: baths.map(({ row }) => row),
          notes: baths.map(({ note }) => note),
        },
      },
    ];
  });
