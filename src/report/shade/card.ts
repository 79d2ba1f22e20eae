import { duration } from "../../core/quantity/text/duration.js";
import { timeFactorText } from "../../core/uptake/law/time-factor-text.js";
import type { TimeCard } from "../../core/uptake/shade/time-grid.js";
import { type Block, paragraph, type Report } from "../report.js";
import type { Column } from "../table.js";
import { degrees, percent } from "../words/amounts.js";
import { decimals, significant } from "../words/digits.js";
import { sentence } from "../words/sentence.js";
import { watch } from "../words/times.js";

/** Minutes and seconds, marked where the time is too short to keep by hand, or over the longest dip. */
function cell(seconds: number, { shortestSeconds, longestSeconds }: TimeCard): string {
  const mark = seconds < shortestSeconds ? "<" : seconds > longestSeconds ? ">" : "";
  return `${mark}${watch(seconds)}`;
}

function legend(card: TimeCard): Block[] {
  const all = card.seconds.flat();
  const assumed = [
    ...(card.strengthMeasured ? [] : ["strength"]),
    ...(card.temperatureMeasured ? [] : ["temperature"]),
  ];
  return [
    ...(all.some((seconds) => seconds < card.shortestSeconds)
      ? [paragraph(`< under the shortest dip of ${duration(card.shortestSeconds)}: dilute the bath.`)]
      : []),
    ...(all.some((seconds) => seconds > card.longestSeconds)
      ? [
          paragraph(
            `> over the longest dip of ${duration(card.longestSeconds)}: strengthen or heat the bath.`,
          ),
        ]
      : []),
    ...(assumed.length === 0
      ? []
      : [
          paragraph(
            `How this dye answers to ${assumed.join(" and ")} is assumed\u2020, so times far from the fresh bath are rough; dipwright swatches --dye ${card.dye} says which swatch tells it.`,
          ),
        ]),
  ];
}

/** A card of dip times over temperature and strength, in every format; CSV has a row for each time. */
export function cardReport(card: TimeCard): Report {
  const on = card.base === null ? "" : ` on ${card.base}`;
  const columns: Column[] = [
    { key: "strength", title: "strength", align: "right" },
    ...card.celsius.map((celsius, j) => ({
      key: `t${j}`,
      title: degrees(celsius),
      align: "right" as const,
    })),
  ];
  return {
    name: "shade-grid",
    data: { ...card },
    rows: {
      columns: [
        { key: "dye", title: "dye" },
        { key: "target", title: "target" },
        { key: "base", title: "base" },
        { key: "strength_pct", title: "strength", digits: (value) => significant(value, 4) },
        { key: "bath_C", title: "bath", digits: (value) => significant(value, 4) },
        { key: "dip_s", title: "dip", digits: (value) => decimals(value, 1) },
      ],
      rows: card.strengths.flatMap((strength, i) =>
        card.celsius.map((celsius, j) => [
          card.dye,
          card.name,
          card.base,
          100 * strength,
          celsius,
          card.seconds[i]![j]!,
        ]),
      ),
    },
    blocks: [
      { kind: "heading", level: 1, text: `${card.name}${on}: dip times in ${card.dye}` },
      ...(card.reachable || card.lab === null
        ? []
        : [paragraph(`Out of reach: the nearest colour is ${card.deltaE00!.toFixed(1)} CIEDE2000 away.`)]),
      {
        kind: "table",
        table: {
          columns,
          rows: card.strengths.map((strength, i) => [
            percent(strength),
            ...card.seconds[i]!.map((seconds) => cell(seconds, card)),
          ]),
        },
      },
      paragraph("Minutes:seconds."),
      ...(card.timeFactor === 1 ? [] : [paragraph(sentence(timeFactorText(card.dye, card.timeFactor)))]),
      ...legend(card),
      paragraph(
        "Hot liquor scalds: gloves, goggles, tongs. Local rules and the supplier's data sheet come first.",
      ),
    ],
  };
}
