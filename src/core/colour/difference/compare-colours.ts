import { done, type Fault, type Outcome } from "../../fault.js";
import type { Colour, Lab, Reading } from "../../model/colour.js";
import { resolveLab } from "../resolve-colour.js";
import { screenColour } from "../screen/screen-swatch.js";
import {
  cie76,
  cie94,
  cie94Textile,
  cmc11,
  cmc21,
  type LabDifference,
  labDifference,
} from "./cie-differences.js";
import { ciede2000, ciede2000Textile } from "./ciede2000.js";

/** The formulas, in the order they are reported. */
export const differenceFormulas = {
  cie76,
  cie94,
  cie94Textile,
  cmc11,
  cmc21,
  ciede2000,
  ciede2000Textile,
} as const;
export type FormulaName = keyof typeof differenceFormulas;

/** All differences of a pair; the first colour is the standard where a formula needs one. */
export interface Comparison extends LabDifference {
  readonly deltaE: Readonly<Record<FormulaName, number>>;
}

/**
 * Every colour difference of two CIELAB colours read alike, and ΔL*, ΔC*ab, ΔH*ab, second minus first.
 * @example compareLab([50, 2.5, 0], [50, 3.1736, 0.5854]).deltaE.ciede2000 // => 1.0000
 * @example compareLab([50, 0, 0], [52, 0, 0]).deltaL // => 2
 */
export const compareLab = (standard: Lab, sample: Lab): Comparison => ({
  deltaE: {
    cie76: cie76(standard, sample),
    cie94: cie94(standard, sample),
    cie94Textile: cie94Textile(standard, sample),
    cmc11: cmc11(standard, sample),
    cmc21: cmc21(standard, sample),
    ciede2000: ciede2000(standard, sample),
    ciede2000Textile: ciede2000Textile(standard, sample),
  },
  ...labDifference(standard, sample),
});

/** A verdict by one formula. */
export interface Verdict {
  readonly formula: FormulaName;
  readonly tolerance: number;
  readonly pass: boolean;
}

/**
 * Whether a comparison stays within a tolerance; a difference equal to it passes.
 * @example judge(compareLab([50, 0, 0], [51, 0, 0]), "cie76", 1).pass // => true
 */
export const judge = ({ deltaE }: Comparison, formula: FormulaName, tolerance: number): Verdict => ({
  formula,
  tolerance,
  pass: deltaE[formula] <= tolerance,
});

/** One side of a comparison. */
export interface ComparedColour {
  readonly lab: Lab;
  readonly hex: string;
  readonly inGamut: boolean;
}

/** What `compare A B` reports. */
export interface CompareReport extends Comparison {
  readonly reading: Reading;
  readonly standard: ComparedColour;
  readonly sample: ComparedColour;
  readonly verdict?: Verdict;
}

/** Compares two colours as they were given, both brought to one reading; a hex keeps its own screen colour. */
export function compareColours(
  standard: Colour,
  sample: Colour,
  reading: Reading,
  limit?: { readonly formula: FormulaName; readonly tolerance: number },
): Outcome<CompareReport> {
  const one = resolveLab(standard, reading);
  const other = resolveLab(sample, reading);
  const faults: Fault[] = [];
  const note = (side: "standard" | "sample", found: readonly Fault[]): void => {
    faults.push(...found.map((fault) => ({ ...fault, path: [side, ...fault.path] })));
  };
  note("standard", one.faults);
  note("sample", other.faults);
  if (!one.ok || !other.ok) return { ok: false, faults };
  const side = (name: "standard" | "sample", colour: Colour, lab: Lab): ComparedColour => {
    if (colour.kind === "hex") return { lab, hex: colour.hex, inGamut: true };
    const { hex, inGamut, faults: found } = screenColour(lab, reading);
    note(name, found);
    return { lab, hex, inGamut };
  };
  const comparison = compareLab(one.value, other.value);
  const report = {
    ...comparison,
    reading,
    standard: side("standard", standard, one.value),
    sample: side("sample", sample, other.value),
  };
  return done(
    limit === undefined ? report : { ...report, verdict: judge(comparison, limit.formula, limit.tolerance) },
    faults,
  );
}
