import { type ColourReport, colourReport, spectrumReport } from "../../core/colour/colour-report.js";
import { curveGrid } from "../../core/colour/spectrum/grid.js";
import { smoothReflectance } from "../../core/colour/spectrum/smooth-reflectance.js";
import type { Outcome } from "../../core/fault.js";
import { type Reading, sameReading } from "../../core/model/colour.js";
import { type Given, readUnder } from "./given.js";

/** The report of a colour under a reading; CIELAB read under another is carried over through its smoothest curve. */
export function reportGiven(given: Given, typed: Reading, reading: Reading): Outcome<ColourReport> {
  const { colour } = given;
  const own = readUnder(given, typed);
  if (colour.kind !== "lab" || sameReading(own, reading)) return colourReport(colour, reading);
  const curve = smoothReflectance(colour.lab, own);
  if (!curve.ok) return curve;
  const { firstNm, stepNm } = curveGrid;
  return spectrumReport({ firstNm, stepNm, reflectance: curve.value }, reading);
}
