import type { FormulaName } from "../../core/colour/difference/compare-colours.js";

/** The formulas as people write them. */
export const formulaTitles: Readonly<Record<FormulaName, string>> = {
  cie76: "CIE76",
  cie94: "CIE94 graphic arts",
  cie94Textile: "CIE94 textile",
  cmc11: "CMC(1:1)",
  cmc21: "CMC(2:1)",
  ciede2000: "CIEDE2000",
  ciede2000Textile: "CIEDE2000 textile",
};
