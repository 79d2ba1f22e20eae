import { weekdayNames } from "../../core/quantity/days.js";
import { rules } from "../../core/week/order/rules.js";
import type { Week } from "../../core/week/week-model.js";
import type { Block } from "../report.js";
import { trimmed } from "../words/digits.js";
import { clock } from "../words/times.js";
import { daySaid, hoursSaid } from "./words.js";

/** The days of a week in words: "Mon to Fri", "Mon, Wed". */
function weekdaysSaid(weekdays: readonly number[]): string {
  const names = weekdays.map((day) => weekdayNames[day - 1]!);
  const inRow = weekdays.every((day, i) => i === 0 || day === weekdays[i - 1]! + 1);
  return inRow && names.length > 2 ? `${names[0]} to ${names.at(-1)}` : names.join(", ");
}

/** What is said first. */
export function summary({ days, wish, startAtMinute, startAssumed, orders }: Week): string {
  const last = days.at(-1);
  const late = orders.filter(({ lateDays }) => lateDays > 0).length;
  const dated = orders.some(({ due }) => due !== null);
  const hours = `${trimmed(wish.dayMinutes / 60, 2)} h a day${wish.dayAssumed ? " (assumed)" : ""} from ${clock(0, startAtMinute)}${startAssumed ? " (assumed)" : ""}, ${weekdaysSaid(wish.weekdays)}`;
  return [
    `${wish.people === 1 ? "One person" : "Two people"}, ${hours}.`,
    last === undefined
      ? "No order is dyed."
      : `${days.length === 1 ? "1 working day" : `${days.length} working days`}; all is done on ${daySaid(last.date)} at ${clock(last.minutes, startAtMinute)}.`,
    late > 0
      ? `${late} of ${orders.length} orders ${late === 1 ? "is" : "are"} late.`
      : dated
        ? "No order is late."
        : "No order has a due date.",
    ...(wish.people === 2 && days.length > 0 && days.every(({ people }) => people.length === 1)
      ? ["A second person ends no day sooner: tanks and dryer set the pace, not hands."]
      : []),
  ].join(" ");
}

/** How the orders were put onto days, and how far that is from the shortest possible. */
export function ruleBlocks({ rule, wish, length, days }: Week): Block[] {
  if (days.length === 0) return [];
  const { minutes, leastMinutes, boundBy } = length;
  const more = 100 * (minutes / leastMinutes - 1);
  return [
    { kind: "heading", level: 2, text: "How the week was put together" },
    {
      kind: "list",
      items: [
        `Each day takes whole orders as long as they fit into it: ${rule}. An order is split only where no day holds it.`,
        `${rules.length} such rules are tried. The best one is late on the fewest days; between equal ones the fewest working days decide, then the fewest set-ups and clean-ups, then the earliest end.`,
        "Every evening a kept bath is poured back into its jug and its tank is cleaned: so a day takes the time that plan gives for it, and the next one starts from what is left, some days older.",
        ...(wish.people === 2
          ? [
              "Two people share the tanks: those that hold one dye stay together, and the longest work goes to whoever has less. Each has a dryer, or half of the places of the only one; where that takes longer, one works alone. Assumed: neither is in the other's way.",
            ]
          : []),
        `The last day ends after ${hoursSaid(minutes)} of working time. In any order these loads end after ${hoursSaid(leastMinutes)} at the earliest, because of ${boundBy}: this week is at most ${Math.ceil(more - 1e-9)} % longer than the shortest.`,
      ],
    },
  ];
}
