import type { CsvRow } from "../../core/csv/csv-format.js";
import type { CsvHeader } from "../../core/csv/csv-header.js";
import { csvNumbers, type DecimalMark, decimalShown, type ReadNumber } from "../../core/csv/csv-number.js";
import { error, type Fault } from "../../core/fault.js";
import { columnNames, columnOf } from "../row/columns.js";
import { type LogStyle, markBeside } from "./log-style.js";

/** Three decimals, or a mark between the thousands: `5.260`. */
const eitherWay = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;
/** Marks between the thousands and nothing else: `1.234,5`. */
const grouped = /^[+-]?[1-9]\d{0,2}(?:(?:\.\d{3})+,\d+|(?:,\d{3})+\.\d+|(?:\.\d{3}){2,}|(?:,\d{3}){2,})$/;

/** The decimal marks of a log, in the order of the file, by the numbers whose mark can be nothing else. */
export function decimalMarks(rows: readonly CsvRow[], { at }: CsvHeader): readonly DecimalMark[] {
  const places = columnNames.filter((name) => columnOf(name).kind === "number").map(at);
  const cells = rows.flatMap(({ fields }) =>
    places.map((place) => (place === undefined ? "" : (fields[place] ?? "").trim())),
  );
  const marks = cells.map((cell) => (eitherWay.test(cell) ? undefined : decimalShown(cell)));
  return [...new Set(marks.filter((mark) => mark !== undefined))];
}

/**
 * Reads a number with its own decimal mark: a spreadsheet keeps `79.5` as text where a comma is the decimal mark, and
 * what is typed beside it becomes `79,5`.
 */
export const numberAlone: ReadNumber = (cell) => csvNumbers()(cell);

/** The fault of a number whose mark may be one between thousands; `marks`: all that the log shows. */
export function thousandsFault(
  cell: string,
  marks: readonly DecimalMark[],
  { delimiter, decimal }: Pick<LogStyle, "delimiter" | "decimal">,
): Fault | undefined {
  if (grouped.test(cell)) {
    const [between] = /[.,]/.exec(cell)!;
    const help = `write ${cell.replaceAll(between, "")}`;
    return error("log-number", [], `"${cell}" has marks between its thousands`, help);
  }
  const own = decimalShown(cell);
  const expected = markBeside(delimiter) ?? marks[0];
  if (!eitherWay.test(cell) || (own === expected && marks.every((mark) => mark === own))) return undefined;
  const whole = cell.replace(/[.,]/, "");
  const sign = decimal === "comma" ? "," : ".";
  return error(
    "log-number",
    [],
    `"${cell}" may be ${Number(cell.replace(",", "."))} or ${Number(whole)}`,
    `write ${whole}, or ${cell.replace(/[.,]/, sign)}0 with a fourth decimal`,
  );
}
