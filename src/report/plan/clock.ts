import type { TimelineEntry } from "../../core/plan/day/timeline.js";
import type { Plan } from "../../core/plan/plan-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Block } from "../report.js";
import { degrees } from "../words/amounts.js";
import { clock } from "../words/times.js";

/** A stretch of the day in one bath: several loads one after the other are one line. */
interface Stretch {
  readonly entry: TimelineEntry;
  readonly endMinute: number;
  readonly parts: number | null;
  readonly loads: readonly number[];
}

const isUnattended = ({ what }: TimelineEntry): boolean => what === "heat" || what === "dry" || what === "cool";
const isAtBath = ({ load }: TimelineEntry): boolean => load !== undefined;

/** Loads of one bath that follow each other, waits between them included, as one. */
function stretches(timeline: readonly TimelineEntry[]): Stretch[] {
  const found: Stretch[] = [];
  // Where the operator's last stretch is: heaters and dryers that start meanwhile do not break it.
  let last = -1;
  for (const entry of timeline) {
    const before = found[last];
    if (
      before !== undefined &&
      isAtBath(entry) &&
      isAtBath(before.entry) &&
      before.entry.bath === entry.bath
    ) {
      found[last] = {
        ...before,
        endMinute: entry.endMinute,
        parts: (before.parts ?? 0) + (entry.parts ?? 0),
        loads: before.loads.at(-1) === entry.load ? before.loads : [...before.loads, entry.load!],
      };
      continue;
    }
    found.push({
      entry,
      endMinute: entry.endMinute,
      parts: entry.parts ?? null,
      loads: entry.load === undefined ? [] : [entry.load],
    });
    if (!isUnattended(entry)) last = found.length - 1;
  }
  return found;
}

function said({ entry: { what, tank }, loads }: Stretch): string {
  const at = tank === undefined ? "" : ` ${tank}`;
  if (loads.length === 0) return `${what}${at}`;
  return loads.length === 1 ? `dip${at}, load ${loads[0]}` : `dip${at}, loads ${loads[0]} to ${loads.at(-1)}`;
}

const minutes = (value: number): string => duration(Math.ceil(value - 1e-9) * 60);

/** The day by the clock. */
export function clockBlocks(plan: Plan): Block[] {
  const start = plan.startAtMinute ?? undefined;
  const { dryer } = plan;
  return [
    { kind: "heading", level: 1, text: "The day" },
    ...(dryer
      ? [
          {
            kind: "paragraph" as const,
            text: `Dry in ${dryer.name} at ${degrees(dryer.celsius)} for ${minutes(dryer.minutes)}, at most ${dryer.capacity} parts a run.`,
          },
        ]
      : []),
    {
      kind: "table",
      table: {
        columns: [
          { key: "from", title: "from", tone: "strong", align: "right" },
          { key: "to", title: "to", align: "right" },
          { key: "what", title: "what" },
          { key: "parts", title: "parts" },
        ],
        rows: stretches(plan.timeline).map((one) => [
          clock(one.entry.startMinute, start),
          clock(one.endMinute, start),
          said(one),
          one.parts,
        ]),
      },
    },
  ];
}
