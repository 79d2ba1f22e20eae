import type { LeftOutReason, LeftOutTimes } from "../../core/offer/colours/left-out.js";
import { apartTolerances, holds, type OfferedColour } from "../../core/offer/colours/offered-colours.js";
import type { Offer } from "../../core/offer/offer-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import { inYaml } from "../../core/quantity/text/in-yaml.js";
import { type Block, paragraph } from "../report.js";
import { decimals, trimmed } from "../words/digits.js";

const places = (value: number): string => decimals(value, 1);

const why: Readonly<Record<LeftOutReason, (worst: number) => string>> = {
  "too-short": (worst) => `shorter than the shortest dip of ${duration(worst)}`,
  "too-narrow": (worst) => `too quick to time: the colour stays for ${places(worst)} s only`,
  temperature: (worst) => `${holds.celsius} °C off move the colour by up to ${places(worst)}`,
  strength: (worst) => `${100 * holds.strength} % of strength off move the colour by up to ${places(worst)}`,
};

const stretchOf = ({ fromSeconds, toSeconds }: LeftOutTimes): string =>
  fromSeconds === toSeconds ? duration(fromSeconds) : `${duration(fromSeconds)} to ${duration(toSeconds)}`;

/** A colour as a line under `shades:`. */
const shadeLine = ({ name, dye, seconds, lab, hex }: OfferedColour, tolerance: number): string =>
  `  ${inYaml(name)}: { dye: ${inYaml(dye)}, time: ${seconds} s, tolerance: ${trimmed(tolerance, 2)} } # ${hex}, lab ${lab.map(places).join(", ")}`;

/** Colours as lines to paste: those of the dyes' own bases first. A dip that does for two bases is there once. */
function shadeLines(colours: readonly OfferedColour[], tolerance: number): string[] {
  const there = new Set<string>();
  const fresh = (one: OfferedColour): boolean => !there.has(one.name) && there.add(one.name).has(one.name);
  const own = colours.filter((one) => !one.estimated && fresh(one));
  const others = [...new Set(colours.filter((one) => one.estimated).map(({ base }) => base))];
  return [
    "shades:",
    ...own.map((one) => shadeLine(one, tolerance)),
    ...others.flatMap((base) => {
      const more = colours.filter((one) => one.estimated && one.base === base && fresh(one));
      return more.length === 0
        ? []
        : [`  # for parts on ${base}, estimates:`, ...more.map((one) => shadeLine(one, tolerance))];
    }),
  ];
}

/** What is left out, a sentence for each dye, stretch of time and reason. */
function leftOutLines(leftOut: readonly LeftOutTimes[]): string[] {
  const lines = new Map<string, (string | null)[]>();
  for (const one of leftOut) {
    const key = `${one.dye}\n${stretchOf(one)}: ${why[one.reason](one.worst)}.`;
    lines.set(key, [...(lines.get(key) ?? []), one.base]);
  }
  return [...lines].map(([key, bases]) => {
    const [dye, rest] = key.split("\n");
    const on = bases.filter((base) => base !== null).join(" and ");
    return `${dye}${on === "" ? "" : ` on ${on}`}, ${rest}`;
  });
}

/** Colours found along each dye's curve, as a table and as lines to paste, and what is left out. */
export function colourBlocks({ colours, leftOut, wish }: Offer): Block[] {
  const apart = apartTolerances * wish.tolerance;
  return [
    { kind: "heading", level: 2, text: "Colours" },
    paragraph(
      `Colours along each dye's curve that are ${trimmed(apart, 2)} CIEDE2000 (${apartTolerances} tolerances) from the bare part and from each other, and that stay within ${trimmed(wish.tolerance, 2)} where the bath is ${holds.celsius} °C or ${100 * holds.strength} % of strength off. Dips are for a fresh bath.`,
    ),
    ...(colours.length === 0
      ? [paragraph("No colour of these dyes holds so well.")]
      : [
          {
            kind: "table" as const,
            table: {
              columns: [
                { key: "dye", title: "dye" },
                { key: "base", title: "base" },
                { key: "dip", title: "dip", show: duration },
                { key: "hex", title: "colour", swatch: true },
                ...["L", "a", "b"].map((key) => ({ key, title: key, digits: places })),
                { key: "celsius", title: "2 °C", digits: places },
                { key: "strength", title: "10 %", digits: places },
                { key: "note", title: "" },
              ],
              rows: colours.map((one) => [
                one.dye,
                one.base,
                one.seconds,
                one.hex,
                ...one.lab,
                one.deltaE00ForCelsius,
                one.deltaE00ForStrength,
                one.estimated ? "estimate" : "",
              ]),
            },
          },
          paragraph("To paste into the batch file:"),
          {
            kind: "code" as const,
            lines: shadeLines(colours, wish.tolerance),
          },
        ]),
    ...(leftOut.length === 0
      ? []
      : [
          paragraph("Left out:"),
          {
            kind: "list" as const,
            items: leftOutLines(leftOut),
          },
        ]),
  ];
}
