import type { ColourReport } from "../../core/colour/colour-report.js";
import { readingSaid } from "../../core/colour/reading.js";
import { textField } from "../fields.js";
import type { Report } from "../report.js";
import { rowTable } from "../row-table.js";
import { decimals } from "../words/digits.js";
import { colourFields } from "./columns.js";
import type { Origin } from "./origin.js";
import { whitenessLimits } from "./whiteness-limits.js";

const joined = (values: readonly number[], places: number): string =>
  values.map((value) => decimals(value, places)).join("  ");

/** Names and values that people read; what is not defined is left out. */
function lines(report: ColourReport): (readonly [what: string, value: string])[] {
  const { xyz, chromaticity, lab, lch, luv, hex, inGamut, whiteness, tint, whitenessValid, yellowness } =
    report;
  const unsure = whitenessValid ? "" : " (outside the limits)";
  return [
    ["X, Y, Z", joined(xyz, 3)],
    ...(chromaticity === null ? [] : [["x, y", joined(chromaticity, 4)] as const]),
    ["L*, a*, b*", joined(lab, 2)],
    ["L*, C*, h", joined(lch, 2)],
    ["L*, u*, v*", joined(luv, 2)],
    ["hex", inGamut ? hex : `${hex}, the nearest a screen can show`],
    ...(whiteness === null ? [] : [["CIE whiteness", `${decimals(whiteness, 2)}${unsure}`] as const]),
    ...(tint === null ? [] : [["tint", `${decimals(tint, 2)}${unsure}`] as const]),
    ...(yellowness === null ? [] : [["yellowness E313", decimals(yellowness, 2)] as const]),
  ];
}

/** One colour, for every format. */
export function colourReportOf(report: ColourReport, origin: Origin): Report {
  const { carriedFrom } = origin;
  const from = carriedFrom === undefined ? null : readingSaid(carriedFrom);
  return {
    name: "colour",
    data: { ...origin, ...report },
    rows: rowTable([
      textField("given", origin.given),
      textField("carried_from", from),
      ...colourFields(report),
    ]),
    blocks: [
      { kind: "heading", level: 1, text: `${origin.given} under ${readingSaid(report.reading)}` },
      {
        kind: "table",
        table: { columns: [{ key: "colour", title: "colour", swatch: true }], rows: [[report.hex]] },
      },
      {
        kind: "table",
        table: {
          columns: [
            { key: "what", title: "quantity" },
            { key: "value", title: "value" },
          ],
          rows: lines(report),
        },
      },
      ...(report.whiteness === null ? [] : [{ kind: "paragraph", text: whitenessLimits } as const]),
      ...(from === null
        ? []
        : [
            {
              kind: "paragraph",
              text: `Read under ${from} and carried over to ${readingSaid(report.reading)} through its smoothest reflectance curve: an estimate.`,
            } as const,
          ]),
    ],
  };
}
