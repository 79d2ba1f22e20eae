import { cellNumber, cellPlace, extraCells } from "../../csv/csv-cell.js";
import type { CsvRow } from "../../csv/csv-format.js";
import type { CsvHeader } from "../../csv/csv-header.js";
import type { ReadNumber } from "../../csv/csv-number.js";
import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Spectrum } from "../spectrum/spectrum.js";

/** What the column of wavelengths is called in messages; every other column is one sample. */
const wavelengthColumn = "wavelength_nm";

/** Whether a column holds wavelengths: wavelength_nm, wavelength (nm), nm. */
export const isWavelength = (name: string): boolean => /^(?:wavelength\b|wavelength_|nm$)/i.test(name);

/** Whether a sample is in percent: reflectance_percent, coral %. */
const isPercent = (name: string): boolean => /percent|%/i.test(name);

/** A sample that was read without a fault. */
export interface ReflectanceSample {
  readonly name: string;
  readonly spectrum: Spectrum;
}

/** What a file held: the good samples in the order of the columns, and what is wrong with the others. */
export interface ReflectanceFile {
  readonly samples: readonly ReflectanceSample[];
  readonly faults: readonly Fault[];
}

/** Takes the rows of a file one by one, then says what it held. */
export interface ReflectanceReader {
  /** `row` counts the header as 1. */
  readonly take: (row: CsvRow) => void;
  readonly end: () => ReflectanceFile;
}

interface Column {
  readonly name: string;
  readonly at: number;
  /** What a value of 1 is written as. */
  readonly scale: 1 | 100;
  readonly values: number[];
  firstNm: number | undefined;
  /** Row of an empty cell after the first value: a gap if a value follows. */
  emptyRow: number | undefined;
  faults: Fault[];
  /** Further cells with the same fault as the last one. */
  more: number;
}

const widest = { from: 400, to: 700 };

function rangeFault(written: number, scale: 1 | 100, row: number, name: string): Fault | undefined {
  const place = cellPlace(row, name);
  const path = ["row", row, name];
  const value = written / scale;
  if (value < 0) return error("reflectance-negative", path, `${place}: reflectance ${written} is below 0`);
  if (value <= 1) return undefined;
  return value > 2 && scale === 1
    ? error(
        "reflectance-percent",
        path,
        `${place}: reflectance ${written} looks like percent`,
        `divide by 100, or name the column ${name}_percent`,
      )
    : error(
        "reflectance-over-one",
        path,
        `${place}: reflectance ${written} is over ${scale}`,
        `reflectance is 0 to ${scale}; leave out the light of fluorescence`,
      );
}

function takeCell(
  column: Column,
  fields: readonly string[],
  nm: number,
  row: number,
  read: ReadNumber,
): void {
  const { name, scale } = column;
  const cell = fields[column.at];
  if (cell?.trim() === "") {
    if (column.firstNm !== undefined) column.emptyRow ??= row;
    return;
  }
  const value = cellNumber(fields, column.at, row, name, read);
  if (cell !== undefined) {
    if (column.emptyRow !== undefined) {
      const place = cellPlace(column.emptyRow, name);
      column.faults.push(
        error("reflectance-gap", ["row", column.emptyRow, name], `${place}: the cell is empty`),
      );
      column.emptyRow = undefined;
    }
    column.firstNm ??= nm;
    column.values.push(typeof value === "number" ? value / scale : Number.NaN);
  }
  const fault = typeof value === "number" ? rangeFault(value, scale, row, name) : value;
  if (fault === undefined) return;
  if (column.faults.at(-1)?.code === fault.code) column.more++;
  else column.faults.push(fault);
}

const steps = "give steps of 5 or 10 nm";

/** What is wrong with a wavelength after the ones before it. */
function wavelengthFault(
  nm: number,
  before: number | undefined,
  step: number | undefined,
  row: number,
): Fault | undefined {
  const path = ["row", row, wavelengthColumn];
  const place = cellPlace(row, wavelengthColumn);
  if (nm % 5 !== 0)
    return error("wavelength-grid", path, `${place}: ${nm} nm is not a multiple of 5 nm`, steps);
  if (before === undefined) return undefined;
  if (nm <= before)
    return error(
      "wavelength-order",
      path,
      `${place}: ${nm} nm comes after ${before} nm`,
      "sort by wavelength",
    );
  if (step === undefined && nm - before > 10)
    return error("wavelength-step", path, `${place}: ${nm} nm follows ${before} nm`, steps);
  if (step !== undefined && nm - before !== step)
    return error(
      nm - before > step ? "wavelength-missing" : "wavelength-step",
      path,
      nm - before > step
        ? `${place}: ${before + step} nm is missing before ${nm} nm`
        : `${place}: ${nm} nm breaks the step of ${step} nm`,
    );
  return undefined;
}

/** Faults of a finished column, the repeated ones counted. */
function columnFaults(column: Column, stepNm: number, headerRow: number): readonly Fault[] {
  const { name, values, firstNm } = column;
  const last = column.faults.at(-1);
  if (last !== undefined)
    return column.more === 0
      ? column.faults
      : [
          ...column.faults.slice(0, -1),
          { ...last, message: `${last.message} (and ${column.more} more in this column)` },
        ];
  const lastNm = firstNm === undefined ? Number.NaN : firstNm + (values.length - 1) * stepNm;
  if (firstNm !== undefined && firstNm <= widest.from && lastNm >= widest.to) return [];
  const spans = firstNm === undefined ? "holds no value" : `spans ${firstNm} to ${lastNm} nm`;
  return [
    error(
      "reflectance-span",
      ["row", headerRow, name],
      `column ${name} ${spans}`,
      `give at least ${widest.from} to ${widest.to} nm`,
    ),
  ];
}

/**
 * Starts reading reflectance curves under a header with a column of wavelengths and one column a sample: 0 to 1, or
 * percent where the name says so, at 5 or 10 nm steps over 400 to 700 nm or wider. A fault names row and column and
 * spoils only its sample; a fault of the wavelengths spoils all. Empty cells before and after a sample's values are no
 * fault.
 */
export function readReflectance(
  { row: headerRow, names }: CsvHeader,
  read: ReadNumber,
): Outcome<ReflectanceReader> {
  const at = names.findIndex(isWavelength);
  if (at < 0)
    return failed(
      error(
        "csv-column-missing",
        ["row", headerRow, wavelengthColumn],
        `row ${headerRow}: there is no column ${wavelengthColumn}`,
        `the first row must name ${wavelengthColumn} and each sample`,
      ),
    );
  if (names.length < 2)
    return failed(
      error("reflectance-no-sample", ["row", headerRow], `row ${headerRow}: there is no sample column`),
    );
  if (names.includes(""))
    return failed(
      error(
        "csv-column-name",
        ["row", headerRow],
        `row ${headerRow}: column ${names.indexOf("") + 1} has no name`,
        "name it, or delete the column",
      ),
    );
  const columns: Column[] = names.flatMap((name, i) =>
    i === at
      ? []
      : [
          {
            name,
            at: i,
            scale: isPercent(name) ? 100 : 1,
            values: [],
            firstNm: undefined,
            emptyRow: undefined,
            faults: [],
            more: 0,
          },
        ],
  );
  const faults: Fault[] = [];
  let before: number | undefined;
  let stepNm: number | undefined;
  return done({
    take: ({ fields, row }) => {
      const nm = cellNumber(fields, at, row, wavelengthColumn, read);
      const fault = typeof nm === "number" ? wavelengthFault(nm, before, stepNm, row) : nm;
      if (fault !== undefined) faults.push(fault);
      else if (before !== undefined) stepNm ??= (nm as number) - before;
      for (const column of columns)
        takeCell(column, fields, typeof nm === "number" ? nm : Number.NaN, row, read);
      const extra = extraCells(fields, names.length, row);
      if (extra !== undefined) faults.push(extra);
      if (typeof nm === "number") before = nm;
    },
    end: () => {
      const step = stepNm ?? 10;
      const found = columns.map((column) => ({ column, faults: columnFaults(column, step, headerRow) }));
      return {
        samples:
          faults.length > 0
            ? []
            : found
                .filter((each) => each.faults.length === 0)
                .map(({ column: { name, values, firstNm } }) => ({
                  name,
                  spectrum: { firstNm: firstNm!, stepNm: step, reflectance: values },
                })),
        faults: [
          ...faults,
          ...found.flatMap((each) =>
            faults.length > 0 && each.faults[0]?.code === "reflectance-span" ? [] : each.faults,
          ),
        ],
      };
    },
  });
}
