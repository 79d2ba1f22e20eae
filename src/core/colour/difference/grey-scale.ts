import type { Lab } from "../../model/colour.js";
import { labToLch } from "../cielab.js";
import { cie76, labDifference } from "./cie-differences.js";

/** Grades of the grey scale in half steps, the best first. */
export const greyGrades = ["5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1"] as const;
export type GreyGrade = (typeof greyGrades)[number];

/** A grade as a number, and as the half step it is reported in. */
export interface GreyScale {
  /** The difference the grade is read from. */
  readonly deltaE: number;
  /** 5 to 1, not rounded; it may fall below 1 for the coarsest differences. */
  readonly value: number;
  readonly grade: GreyGrade;
}

/** From this difference on the grade is the next one. */
const changeLimits = [0.4, 1.25, 2.1, 2.95, 4.1, 5.8, 8.2, 11.6] as const;

/** Mean hue [degrees] as the grey-scale formula takes it. */
function meanHue(h1: number, h2: number): number {
  const mean = (h1 + h2) / 2;
  return Math.abs(h1 - h2) <= 180 ? mean : mean < 180 ? mean + 180 : mean - 180;
}

/**
 * The difference ΔE_F of the grey scale for change in colour: CIELAB with less weight on chroma and hue.
 * ΔC_K = ΔC - D, ΔH_K = ΔH - D, D = ΔC C_M exp(-x)/100, x = (|h_M - 280°|/30)², the angle at most 180°;
 * ΔC_F = ΔC_K/(1 + (20 C_M/1000)²), ΔH_F = ΔH_K/(1 + (10 C_M/1000)²), C_M and h_M the means of the two.
 *
 * @source isoA05 formula (from memory)
 * @example changeDeltaE([50, 0, 0], [53.4, 0, 0]) // => 3.4
 */
export function changeDeltaE(original: Lab, changed: Lab): number {
  const { deltaL, deltaC, deltaH } = labDifference(original, changed);
  const [, C1, h1] = labToLch(original);
  const [, C2, h2] = labToLch(changed);
  const C = (C1 + C2) / 2;
  const apart = Math.abs(meanHue(h1, h2) - 280);
  const x = (Math.min(apart, 360 - apart) / 30) ** 2;
  const D = (deltaC * C * Math.exp(-x)) / 100;
  return Math.hypot(
    deltaL,
    (deltaC - D) / (1 + (20 * C * 1e-3) ** 2),
    (deltaH - D) / (1 + (10 * C * 1e-3) ** 2),
  );
}

/**
 * Grey-scale grade for change in colour: 5 - ΔE_F/1.7 up to 3.4, 5 - log2(ΔE_F/0.85) above; the half step by
 * the intervals of the standard.
 *
 * @source isoA05 grades and intervals (from memory)
 * @source isoA02 nominal differences, which lie within 0.03 of the formula
 * @example changeGrade([50, 0, 0], [56.8, 0, 0]).grade // => "2"
 */
export function changeGrade(original: Lab, changed: Lab): GreyScale {
  const deltaE = changeDeltaE(original, changed);
  const value = deltaE <= 3.4 ? 5 - deltaE / 1.7 : 5 - Math.log2(deltaE / 0.85);
  const step = changeLimits.filter((limit) => deltaE >= limit).length;
  return { deltaE, value, grade: greyGrades[step]! };
}

/**
 * Grey-scale grade for staining of an undyed neighbour: with ΔE_GS = ΔE - 0.4 √(ΔE² - ΔL²) it is
 * 6.1 - 1.45 ln(ΔE_GS), or 5 - 0.23 ΔE_GS where that formula gives more than 4; reported to the nearest half.
 *
 * ΔE the CIELAB difference.
 * @source isoA04 formula (from memory)
 * @source isoA03 nominal differences, which lie within 0.05 of the formula
 * @example stainingGrade([95, 0, 0], [86.5, 0, 0]).grade // => "3"
 */
export function stainingGrade(clean: Lab, stained: Lab): GreyScale {
  const total = cie76(clean, stained);
  const deltaE = total - 0.4 * Math.hypot(stained[1] - clean[1], stained[2] - clean[2]);
  const steep = deltaE > 0 ? 6.1 - 1.45 * Math.log(deltaE) : Number.POSITIVE_INFINITY;
  const value = steep > 4 ? 5 - 0.23 * deltaE : steep;
  const step = Math.min(8, Math.max(0, Math.round((5 - value) * 2)));
  return { deltaE, value, grade: greyGrades[step]! };
}
