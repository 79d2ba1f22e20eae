import { topUpRecords } from "../../core/bath/load/top-up-rules.js";
import type { Plan, PlanBath } from "../../core/plan/plan-model.js";
import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Block } from "../report.js";
import { degrees, litres, percent, pour } from "../words/amounts.js";
import { footnote, mark } from "../words/assumed.js";
import { dyeText, measuredDye } from "../words/dye.js";
import { clock, stretch } from "../words/times.js";
import { drainText, heatText } from "./advice.js";
import { lifeBlocks } from "./life-blocks.js";
import { partAdvice } from "./part-advice.js";

function makeUpSteps(plan: Plan, bath: PlanBath): string[] {
  const { makeUp, heating, start } = bath;
  const on = plan.timeline.find((entry) => entry.what === "heat" && entry.bath === bath.bath);
  const heat =
    heating.minutes === null
      ? `Heat to ${degrees(bath.celsius)} (no heater power given: the time is not known).`
      : `Switch the heater on at ${clock(on?.startMinute ?? 0, plan.startAtMinute ?? undefined)}: ${degrees(bath.celsius)} takes about ${duration(Math.ceil(heating.minutes) * 60)}, lid on if there is one. Stay near.`;
  if (start.kind === "kept") {
    const age = start.ageDays > 0 ? `, ${start.ageDays} d old` : "";
    return [
      `Shake the jug and pour the kept bath into the tank: ${litres(start.volumeL)} when hot (${litres(makeUp.volumeColdL)} cold), at ${percent(start.strength)} strength${age}.`,
      heat,
    ];
  }
  return [
    `Pour ${pour(makeUp.waterMl)} of water into the tank.`,
    `Shake the dye, then stir in ${dyeText(makeUp)}: ${bath.dilution}.`,
    heat,
    `Hot, it must stand at the ${litres(makeUp.volumeHotL)} mark (${litres(makeUp.volumeColdL)} cold).`,
  ];
}

function loadTable(bath: PlanBath): Block {
  const windows = bath.loads.some((load) => load.windowSeconds !== null);
  const m = mark(bath.dyeBalance.restsOnAssumed);
  const misses = bath.loads.some((load) => load.deltaE00 !== null && load.deltaE00 >= 0.05);
  return {
    kind: "table",
    table: {
      columns: [
        { key: "dip", title: `DIP${m}`, tone: "strong" as const },
        { key: "load", title: "load" },
        { key: "parts", title: "parts" },
        { key: "what", title: "what" },
        ...(windows ? [{ key: "window", title: `good min:s${m}` }] : []),
        ...(misses ? [{ key: "dE", title: "dE00", digits: (value: number) => value.toFixed(1) }] : []),
        { key: "strength", title: `bath${m}`, show: (value: number) => percent(value) },
        ...(bath.loads.some((load) => load.topUp) ? [{ key: "then", title: "then" }] : []),
      ],
      rows: bath.loads.map((load) => [
        duration(load.dipSeconds),
        load.load,
        load.parts,
        [
          load.reachable ? "" : "NOT REACHED, nearest:",
          load.again ? "second dip of" : "",
          load.part,
          load.shade,
          load.base === null ? "" : `on ${load.base}`,
        ]
          .filter(Boolean)
          .join(" "),
        ...(windows ? [load.windowSeconds && stretch(...load.windowSeconds)] : []),
        ...(misses ? [load.deltaE00] : []),
        load.strengthBefore,
        ...(bath.loads.some((other) => other.topUp) ? [load.topUp ? "top up" : ""] : []),
      ]),
    },
  };
}

function topUps(bath: PlanBath): Block[] {
  const items = bath.loads.flatMap((load) => {
    const { topUp } = load;
    if (!topUp) return [];
    const pieces = [
      figureOfDye(topUp, "amount") > 0 ? dyeText(topUp) : "",
      topUp.waterMl > 0 ? `${pour(topUp.waterMl)} of water` : "",
    ].filter(Boolean);
    return [`After load ${load.load}: ${pieces.join(" and ")}.`];
  });
  const heading: Block = {
    kind: "heading",
    level: 2,
    text: `Top-ups (${bath.topUpRule}: ${topUpRecords[bath.topUpRule].said}; amounts cold)${mark(bath.dyeBalance.restsOnAssumed)}`,
  };
  return items.length > 0
    ? [heading, { kind: "list", items }]
    : [heading, { kind: "paragraph", text: "None in this batch." }];
}

function whereTheDyeGoes({ dyeBalance: b, dyeFate }: PlanBath): string {
  const kind = kindWith(b, "start");
  const say = (name: "start" | "added" | "takenUp" | "draggedOut" | "left"): string =>
    measuredDye(kind, figureOfDye(b, name));
  const share = (of: "onParts" | "rinsedAway" | "left"): string =>
    dyeFate === null ? "" : ` (${percent(dyeFate[of])})`;
  return `Dye: ${say("start")} at the start and ${say("added")} added; ${say("takenUp")} on the parts${share("onParts")}, ${say("draggedOut")} rinsed away${share("rinsedAway")}, ${say("left")} left${share("left")}.${mark(b.restsOnAssumed)}`;
}

const afterDip = ({ rinsing: { drainSeconds, rinseSeconds, rinseWaterL } }: Plan): string =>
  `After each dip: drain ${duration(drainSeconds)} over the tank, rinse at once for ${duration(rinseSeconds)} in ${litres(rinseWaterL)} of clear water.`;

/** Which part to read, and what to type then, where that would make the times surer. */
function trialBlocks({ trialAdvice, bath }: PlanBath): Block[] {
  if (trialAdvice === null) return [];
  const { load, seconds } = trialAdvice;
  return [
    {
      kind: "paragraph",
      text: `Worth a trial: what is not known of this dye in a weaker bath is more than the windows allow. Dry and read one part of load ${load}, write its colour under bath ${bath + 1} as trial: { time: ${Math.round(seconds)} s, lab: [L, a, b] }, and plan the loads behind it again.`,
    },
  ];
}

/** One bath, in the order in which it is worked. */
export function bathBlocks(plan: Plan, bath: PlanBath, index: number): Block[] {
  const after =
    bath.after === "keep"
      ? "Afterwards let the bath cool, pour it back into its jug, label it, keep it from light."
      : `Afterwards ${litres(bath.loads.at(-1)?.volumeAfterL ?? bath.makeUp.volumeHotL)} of spent liquor are left to be disposed of as local rules allow.`;
  const handling = partAdvice(plan, index);
  return [
    {
      kind: "heading",
      level: 1,
      text: `Bath ${index + 1}: ${bath.dye} in tank ${bath.tank}, ${degrees(bath.celsius)}`,
    },
    ...(bath.notes === null ? [] : [{ kind: "paragraph" as const, text: `Note: ${bath.notes}` }]),
    { kind: "list", ordered: true, items: makeUpSteps(plan, bath) },
    ...(handling.length === 0 ? [] : [{ kind: "list" as const, items: handling }]),
    loadTable(bath),
    { kind: "paragraph", text: afterDip(plan) },
    ...trialBlocks(bath),
    ...topUps(bath),
    { kind: "paragraph", text: `${after} ${whereTheDyeGoes(bath)}` },
    ...lifeBlocks(plan, bath),
    ...[drainText(plan, bath), heatText(bath), footnote(bath.dyeBalance.restsOnAssumed)].flatMap((text) =>
      text === null ? [] : [{ kind: "paragraph" as const, text }],
    ),
  ];
}
