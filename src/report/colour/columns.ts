import type { ColourReport } from "../../core/colour/colour-report.js";
import { readingSaid } from "../../core/colour/reading.js";
import { textField } from "../fields.js";
import type { Field } from "../row-table.js";
import type { Cell } from "../table.js";
import { decimals } from "../words/digits.js";

const number = (key: string, value: number | null, places = 4): Field => [
  { key, title: key, digits: (n) => decimals(n, places), show: (n) => decimals(n, Math.min(places, 2)) },
  value,
];
const yesNo = (value: boolean): Cell => (value ? "yes" : "no");

/** One colour as a row of CSV: columns with their values. */
export function colourFields(report: ColourReport): readonly Field[] {
  const { xyz, chromaticity, lab, lch, luv, hex, inGamut, whiteness, tint, whitenessValid, yellowness } =
    report;
  return [
    textField("reading", readingSaid(report.reading)),
    ...xyz.map((value, i) => number("XYZ"[i]!, value)),
    number("x", chromaticity?.[0] ?? null, 5),
    number("y", chromaticity?.[1] ?? null, 5),
    ...lab.map((value, i) => number("Lab"[i]!, value)),
    number("C", lch[1]),
    number("h_deg", lch[2]),
    number("u", luv[1]),
    number("v", luv[2]),
    textField("hex", hex),
    textField("in_gamut", yesNo(inGamut)),
    number("whiteness", whiteness),
    number("tint", tint),
    textField("whiteness_valid", whiteness === null ? null : yesNo(whitenessValid)),
    number("yellowness", yellowness),
  ];
}
