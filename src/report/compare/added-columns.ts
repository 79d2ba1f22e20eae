import type { Comparison } from "../../core/colour/difference/compare-colours.js";
import type { Column } from "../table.js";
import { decimals } from "../words/digits.js";

const digits = (value: number): string => decimals(value, 4);
const show = (value: number): string => decimals(value, 2);

/** Columns of a comparison, in the order of `differences`. */
export const differenceColumns: readonly Column[] = (
  [
    ["cie76", "CIE76"],
    ["cie94", "CIE94"],
    ["cie94Textile", "CIE94 textile"],
    ["cmc11", "CMC(1:1)"],
    ["cmc21", "CMC(2:1)"],
    ["ciede2000", "CIEDE2000"],
    ["deltaL", "ΔL"],
    ["deltaC", "ΔC"],
    ["deltaH", "ΔH"],
  ] as const
).map(([key, title]) => ({ key, title, digits, show }));

/** The numbers of a comparison, one a column of `differenceColumns`. */
export const differences = ({ deltaE, deltaL, deltaC, deltaH }: Comparison): readonly number[] => [
  deltaE.cie76,
  deltaE.cie94,
  deltaE.cie94Textile,
  deltaE.cmc11,
  deltaE.cmc21,
  deltaE.ciede2000,
  deltaL,
  deltaC,
  deltaH,
];

/** Whether a pair is within the tolerance. */
export const verdictColumn: Column = { key: "verdict", title: "verdict" };

/** Every column that a file of pairs gets. */
export const addedColumns: readonly Column[] = [...differenceColumns, verdictColumn];
