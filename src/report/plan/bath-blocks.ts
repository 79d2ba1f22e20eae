import { looseLimit } from "../../core/bath/rinse/enough-rinses.js";
import { largest, smallest } from "../../core/maths/extent.js";
import type { Cover } from "../../core/model/batch.js";
import type { Plan, PlanBath, PlanCarryOver, PlanLoad } from "../../core/plan/plan-model.js";
import { figureOfDye } from "../../core/quantity/dye/dye-figures.js";
import { duration } from "../../core/quantity/text/duration.js";
import { timeFactorText } from "../../core/uptake/law/time-factor-text.js";
import { type Block, paragraph } from "../report.js";
import { degrees, litres, percent, pour, volumeSaid } from "../words/amounts.js";
import { trimmed } from "../words/digits.js";
import { pouredText } from "../words/dye.js";
import { sentence } from "../words/sentence.js";
import { clock, stretch, watch } from "../words/times.js";
import { partAdvice } from "./part-advice.js";

/** "6.1 mL of concentrate and 141 mL of water of 20 °C". */
function poured(topUp: NonNullable<PlanLoad["topUp"]>, celsius: number): string {
  const pieces = [
    figureOfDye(topUp, "amount") > 0 ? pouredText(topUp) : "",
    topUp.waterMl > 0 ? `${pour(topUp.waterMl)} of water` : "",
  ].filter(Boolean);
  return `${pieces.join(" and ")} of ${degrees(celsius)}`;
}

function fillStep({ start, makeUp, dilution, startTopUp }: PlanBath): string {
  if (start.kind === "fresh")
    return `Pour ${pour(makeUp.waterMl)} of water into the tank. Shake the dye and stir in ${pouredText(makeUp)} (${dilution}).`;
  const age = start.ageDays > 0 ? `, ${trimmed(start.ageDays, 1)} d old` : "";
  const from =
    start.log === undefined
      ? ""
      : ` (by ${start.log.file} up to row ${start.log.row} of ${start.log.time.replace("T", " ")})`;
  const more =
    startTopUp === null ? "" : ` Before you heat it, add ${poured(startTopUp, startTopUp.celsius)}.`;
  return `Shake the jug and pour the kept bath in: ${litres(makeUp.volumeColdL)} cold, ${percent(start.strength)}${age}${from}.${more}`;
}

/** What is on the liquor while it heats, waits and is racked for. */
const coverOn: Readonly<Record<Cover, string>> = { none: "", lid: ", lid on", balls: ", balls on" };

/** What comes off the liquor before the bath cools. */
const coverOff: Readonly<Record<Cover, string>> = { none: "", lid: ", lid off", balls: ", balls out" };

/** Of a bath that heats up, what evaporates from this share on is filled up [-]. */
const lostSaid = 0.02;

function heatStep(plan: Plan, { bath, celsius, heating, makeUp, start, cover }: PlanBath): string {
  const on = plan.timeline.find((entry) => entry.what === "heat" && entry.bath === bath);
  const lost = heating.evaporatedL > lostSaid * makeUp.volumeHotL;
  const mark = lost
    ? `; then fill up with hot water what evaporated, about ${pour(1000 * heating.evaporatedL)}`
    : start.kind === "fresh"
      ? `, then at the ${volumeSaid(makeUp.volumeHotL)} mark`
      : "";
  if (heating.minutes === null)
    return `Heat to ${degrees(celsius)}; how long that takes is not known without the heater's power${mark}.`;
  const from = on === undefined ? "" : ` at ${clock(on.startMinute, plan.startAtMinute ?? undefined)}`;
  return `Heater on${from}${coverOn[cover]}, stay near: ${degrees(celsius)} in ${duration(60 * Math.ceil(heating.minutes))}${mark}.`;
}

/** What is done with every load, in the order of the hands. */
function eachLoad({ handling }: Plan, { rinse, cover }: PlanBath): string {
  const { drainSeconds, rinseSeconds, rinseWaterL, rinses, rinseEvery } = handling;
  const baths =
    rinses === 1 ? `${volumeSaid(rinseWaterL)} of water` : `${rinses} baths of ${volumeSaid(rinseWaterL)}`;
  const change = rinseEvery === 1 ? "fresh each load" : `changed every ${rinseEvery} loads`;
  const loose =
    rinse.looseShare < looseLimit ? "" : ` ${percent(rinse.looseShare)} of the dye on the parts stays loose.`;
  return `Each load: rack it${cover === "lid" ? ", lid on" : ""}; dip at its °C, parts moving and turning; drain ${duration(drainSeconds)} over the tank; rinse at once ${duration(rinseSeconds)} in ${baths}, ${change}.${loose}`;
}

const what = ({ reachable, again, part, shade, base }: PlanLoad): string =>
  [
    reachable ? "" : "NOT REACHED, nearest:",
    again ? "second dip of" : "",
    part,
    shade,
    base === null ? "" : `on ${base}`,
  ]
    .filter(Boolean)
    .join(" ");

/** A miss of the shade from this on is shown; less is not seen [CIEDE2000]. */
const missSaid = 0.5;

/** What is done after a load and not after every one. */
function noteUnder({ handling }: Plan, { topUp, load }: PlanLoad, isLast: boolean): string | null {
  const { rinseEvery, topUpCelsius } = handling;
  const then = [
    ...(topUp === null ? [] : [`top up: ${poured(topUp, topUpCelsius)}`]),
    ...(rinseEvery > 1 && load % rinseEvery === 0 && !isLast ? ["change the rinse water"] : []),
  ];
  return then.length === 0 ? null : `then ${then.join("; ")}`;
}

/** "98 %", or of a mix whose dyes differ "93-101 %". */
function strengthSaid({ strengthBefore, mix }: PlanLoad): string {
  const said = (mix ?? [{ strengthBefore }]).map((one) => Math.round(100 * one.strengthBefore));
  const [low, high] = [smallest(said), largest(said)];
  return `${low === high ? low : `${low}-${high}`} %`;
}

function loadTable(plan: Plan, bath: PlanBath): Block {
  const { loads } = bath;
  const windows = loads.some((load) => load.windowSeconds !== null);
  const misses = loads.some((load) => load.deltaE00 !== null && load.deltaE00 >= missSaid);
  const waits = loads.some((load) => load.waitSeconds >= 0.5);
  const start = plan.startAtMinute ?? undefined;
  const begins = new Map(
    plan.timeline
      .filter((entry) => entry.what === "dip" && entry.bath === bath.bath)
      .map((entry) => [entry.load, entry.startMinute]),
  );
  return {
    kind: "table",
    table: {
      columns: [
        { key: "dip", title: "DIP", tone: "strong", align: "right" },
        { key: "at", title: "at °C", digits: (value) => value.toFixed(1) },
        ...(waits ? [{ key: "wait", title: "wait", align: "right" as const }] : []),
        { key: "rack", title: "rack", align: "right" },
        { key: "load", title: "#" },
        { key: "parts", title: "parts" },
        { key: "what", title: "what" },
        ...(windows ? [{ key: "window", title: "good" }] : []),
        ...(misses ? [{ key: "dE", title: "dE00", digits: (value: number) => value.toFixed(1) }] : []),
        { key: "strength", title: "bath", align: "right" as const },
      ],
      rows: loads.map((load) => [
        watch(load.dipSeconds),
        load.celsiusBefore,
        ...(waits ? [load.waitSeconds >= 0.5 ? watch(load.waitSeconds) : ""] : []),
        clock(begins.get(load.load) ?? 0, start),
        load.load,
        load.parts,
        what(load),
        ...(windows ? [load.windowSeconds && stretch(...load.windowSeconds)] : []),
        ...(misses ? [load.deltaE00] : []),
        strengthSaid(load),
      ]),
      notes: loads.map((load, i) => noteUnder(plan, load, i === loads.length - 1)),
    },
  };
}

/** "1:9" or "20 g/L", as on a jug. */
const ratioText = (makeUp: PlanBath["makeUp"]): string =>
  "gramsPerL" in makeUp
    ? `${trimmed(makeUp.gramsPerL, 2)} g/L`
    : `1:${trimmed((1 - makeUp.fraction) / makeUp.fraction, 2)}`;

function coolStep({ handling }: Plan, { coolMinutes, cover }: PlanBath): string {
  const under = `under ${degrees(handling.coolToCelsius)}`;
  const off = `Switch all off${coverOff[cover]}`;
  if (coolMinutes === null)
    return `${off}. The room is too warm for the bath to come ${under}: let it cool as far as it goes.`;
  if (coolMinutes === 0) return `${off}; it may be emptied at once, since it is ${under}.`;
  return `${off}; empty it ${under}, after ${duration(60 * Math.ceil(coolMinutes))}.`;
}

/** How old a bath is, as written on a jug that is read weeks later. */
function ageText({ date }: Plan, { ageDays }: PlanCarryOver): string {
  const on = date ?? "(today's date)";
  return ageDays > 0 ? `${trimmed(ageDays, 1)} d old on ${on}` : `made ${on}`;
}

/** The strength of a kept bath: of each dye of a mix, where they are not all the same. */
function strengthText({ strength, mix }: PlanCarryOver): string {
  return mix !== undefined && new Set(mix.map((one) => percent(one.strength))).size > 1
    ? mix.map((one) => `${one.dye} ${percent(one.strength)}`).join(", ")
    : percent(strength);
}

function endSteps(plan: Plan, bath: PlanBath): string[] {
  const { carryOver, dye, leftL } = bath;
  const cool = coolStep(plan, bath);
  if (carryOver === null) {
    return [cool, `About ${litres(leftL)} of spent liquor are left to be disposed of as local rules allow.`];
  }
  const { coldVolumeL, areaDm2, useBy, keepsDays, daysToNext } = carryOver;
  const label = [
    bath.makeUp.mix === undefined ? `${dye} ${ratioText(bath.makeUp)}` : `${dye} (${bath.dilution})`,
    `${litres(coldVolumeL)} cold at ${strengthText(carryOver)}`,
    `${(areaDm2 / 100).toFixed(2)} m2 dyed`,
    ageText(plan, carryOver),
    ...(useBy !== null
      ? [`use by ${useBy}`]
      : keepsDays === null || keepsDays < 0
        ? []
        : [`keeps ${trimmed(keepsDays, 1)} d from then`]),
  ].join(", ");
  const past =
    keepsDays !== null && keepsDays < 0 ? " It is past its shelf life: make it up fresh next time." : "";
  return [
    cool,
    `Back into its jug, away from light. Label: ${label}.${past} Next batch file${daysToNext === null ? ", the days until then added to the age" : ""}:`,
  ];
}

/** What goes into the next batch file, on a line that is not broken. */
const nextStart = ({ log }: Plan, { carryOver }: PlanBath): Block[] =>
  carryOver === null
    ? []
    : [{ kind: "code", lines: [`start: ${log === undefined ? carryOver.start : "log"}`] }];

/** Where the times of the dye are not those of its swatches. */
const learnedBlocks = ({ dye, timeFactor }: PlanBath): Block[] =>
  timeFactor === 1 ? [] : [paragraph(sentence(timeFactorText(dye, timeFactor)))];

/** Which part to read, and what to type then, where that would make the times surer. */
function trialBlocks({ trialAdvice, bath, celsius }: PlanBath): Block[] {
  if (trialAdvice === null) return [];
  const { load, seconds } = trialAdvice;
  return [
    paragraph(
      `Worth a trial: dry and read one part of load ${load}, write its colour under bath ${bath + 1} as trial: { time: ${Math.round(seconds)} s, lab: [L, a, b] } (what its dip counts for at ${degrees(celsius)}), and plan the loads behind it again.`,
    ),
  ];
}

/** Dips under this show every pause of the hand [s]. Common practice, no source. */
const quickSeconds = 60;

/** What keeps short dips level. */
const quickDips = ({ loads }: PlanBath): string[] =>
  loads.some(({ dipSeconds }) => dipSeconds < quickSeconds)
    ? ["Short dips spot and streak: clean parts, all in at once, never still, rinsed."]
    : [];

/** What a bath with a log wants to have read, since it teaches most. */
const toLog = ({ log }: Plan): string[] =>
  log === undefined ? [] : ["Log each load: dip, °C, colour of one dry part; each top-up: mL of water."];

/** The page of one bath: what hands need there, in the order in which they need it, and nothing else. */
export function bathBlocks(plan: Plan, bath: PlanBath, index: number): Block[] {
  return [
    {
      kind: "heading",
      level: 1,
      text: `Bath ${index + 1}: ${bath.dye} in tank ${bath.tank}, ${degrees(bath.celsius)}`,
    },
    {
      kind: "list",
      items: [
        ...(bath.notes === null ? [] : [`Note: ${bath.notes}`]),
        fillStep(bath),
        heatStep(plan, bath),
        eachLoad(plan, bath),
        ...quickDips(bath),
        ...toLog(plan),
        ...partAdvice(plan, index),
      ],
    },
    loadTable(plan, bath),
    ...learnedBlocks(bath),
    ...trialBlocks(bath),
    { kind: "list", items: endSteps(plan, bath) },
    ...nextStart(plan, bath),
  ];
}
