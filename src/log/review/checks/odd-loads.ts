import { type Fault, warning } from "../../../core/fault.js";
import { median } from "../../../core/maths/median.js";
import { isDoubtfulFactor } from "../../../core/quality/estimates/priors.js";
import { inRow } from "../../read/in-row.js";
import type { LearnedDye } from "../learn-dye.js";
import type { JudgedLoad } from "../points/judged-load.js";

/**
 * Warnings where the seconds of a load give another colour than the one that was read, or one that is farther from its
 * shade than those of the other loads: seconds, colour or shade may be wrong.
 */
export function oddLoads({ foreseen }: LearnedDye, judged: readonly JudgedLoad[]): Fault[] {
  const usual = Math.exp(median(judged.map(({ timeRatio }) => Math.log(timeRatio))) ?? 0);
  const ratios = new Map(judged.map(({ row, timeRatio }) => [row, timeRatio / usual]));
  return foreseen.flatMap(({ reading: { row }, apart }) => {
    if (row.seconds === undefined) return [];
    const said = (column: string, seconds: number, what: string, help: string): Fault[] => [
      inRow(
        row.row!,
        column,
        warning(
          "log-odd-load",
          [],
          `a dip of ${row.seconds} s ${what}, which takes about ${Math.round(seconds)} s`,
          help,
        ),
      ),
    ];
    if (isDoubtfulFactor(Math.exp(apart)))
      return said(
        "seconds",
        row.seconds * Math.exp(-apart),
        "does not give the colour of the row",
        "check the seconds and the colour",
      );
    const ratio = ratios.get(row);
    return ratio === undefined || !isDoubtfulFactor(ratio)
      ? []
      : said(
          "shade",
          row.seconds / ratio,
          `is not one for shade "${row.shade}"`,
          "check the shade and the seconds",
        );
  });
}
