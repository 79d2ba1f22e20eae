import type { TimelineEntry } from "../../core/plan/day/timeline.js";
import type { Plan } from "../../core/plan/plan-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Block } from "../report.js";
import { degrees } from "../words/amounts.js";
import { clock } from "../words/times.js";

/** One line of the day. */
interface Stretch {
  readonly startMinute: number;
  readonly endMinute: number;
  readonly what: string;
  readonly parts: number | null;
  /** Loads of one bath that follow each other are one line. */
  readonly dips?: { readonly bath: number; readonly loads: readonly number[]; readonly waitMinutes: number };
}

/** What needs the operator's hands, or the bath a time of its own: the rest of a day is time to spare. */
const isSpare = ({ what, load }: TimelineEntry): boolean => what === "wait" && load === undefined;

const stretchOf = ({
  what,
  tank,
  bath,
  load,
  parts = 0,
  startMinute,
  endMinute,
}: TimelineEntry): Stretch => ({
  startMinute,
  endMinute,
  what: tank === undefined ? what : `${what} ${tank}`,
  parts: parts === 0 ? null : parts,
  ...(bath === undefined || load === undefined
    ? {}
    : {
        dips: { bath, loads: [load], waitMinutes: what === "wait" ? endMinute - startMinute : 0 },
        what: `dip ${tank}`,
      }),
});

/** Loads of one bath that follow each other, waits between them included, as one; the dryer's runs with their filling. */
function stretches(timeline: readonly TimelineEntry[], clockOf: (minute: number) => string): Stretch[] {
  const found: Stretch[] = [];
  // Where the operator's last stretch is: heaters and baths that cool meanwhile do not break it.
  let last = -1;
  for (const entry of timeline) {
    if (isSpare(entry)) continue;
    const next = stretchOf(entry);
    const before = found[last];
    if (entry.what === "dry") {
      const filling = found.findLast(({ what }) => what.endsWith("dryer loading"))!;
      found[found.indexOf(filling)] = {
        ...filling,
        what: `${filling.what}, dry until ${clockOf(entry.endMinute)}`,
      };
      continue;
    }
    if (before?.dips !== undefined && next.dips !== undefined && before.dips.bath === next.dips.bath) {
      const [load] = next.dips.loads as [number];
      const { bath, loads, waitMinutes } = before.dips;
      found[last] = {
        ...before,
        endMinute: next.endMinute,
        parts: (before.parts ?? 0) + (next.parts ?? 0),
        dips: {
          bath,
          loads: loads.at(-1) === load ? loads : [...loads, load],
          waitMinutes: waitMinutes + next.dips.waitMinutes,
        },
      };
      continue;
    }
    if (before?.what === "dryer emptying" && entry.what === "dryer loading") {
      found[last] = { ...next, startMinute: before.startMinute, what: "dryer emptying, dryer loading" };
      continue;
    }
    found.push(next);
    if (entry.what !== "heat" && entry.what !== "cool") last = found.length - 1;
  }
  return found;
}

function said({ what, dips }: Stretch): string {
  if (dips === undefined) return what;
  const [first, ...more] = dips.loads;
  const waits = dips.waitMinutes < 1 ? "" : ` (${minutes(dips.waitMinutes)} of it waiting)`;
  return more.length === 0
    ? `${what}, load ${first}${waits}`
    : `${what}, loads ${first} to ${more.at(-1)}${waits}`;
}

const minutes = (value: number): string => duration(Math.ceil(value - 1e-9) * 60);

/** The day by the clock. */
export function clockBlocks(plan: Plan): Block[] {
  const start = plan.startAtMinute ?? undefined;
  const { dryer } = plan;
  if (plan.timeline.length === 0) return [];
  return [
    {
      kind: "heading",
      level: 2,
      text: dryer
        ? `The day (dry in ${dryer.name} at ${degrees(dryer.celsius)} for ${minutes(dryer.minutes)}, at most ${dryer.capacity} parts a run)`
        : "The day",
    },
    {
      kind: "table",
      table: {
        columns: [
          { key: "from", title: "from", tone: "strong", align: "right" },
          { key: "to", title: "to", align: "right" },
          { key: "what", title: "what" },
          { key: "parts", title: "parts" },
        ],
        rows: stretches(plan.timeline, (minute) => clock(minute, start)).map((one) => [
          clock(one.startMinute, start),
          clock(one.endMinute, start),
          said(one),
          one.parts,
        ]),
      },
    },
  ];
}
