import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Spectrum } from "../spectrum/spectrum.js";
import { csvNumber, type DecimalMark } from "./csv-number.js";

/** The column of wavelengths; every other column is one sample. */
export const wavelengthColumn = "wavelength_nm";

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
  readonly take: (fields: readonly string[], row: number) => void;
  readonly end: () => ReflectanceFile;
}

interface Column {
  readonly name: string;
  readonly at: number;
  readonly values: number[];
  firstNm: number | undefined;
  /** Row of an empty cell after the first value: a gap if a value follows. */
  emptyRow: number | undefined;
  faults: Fault[];
  /** Further cells with the same fault as the last one. */
  more: number;
}

const widest = { from: 400, to: 700 };

function cellFault(cell: string, value: number | undefined, row: number, name: string): Fault | undefined {
  const place = `row ${row}, column ${name}`;
  if (value === undefined)
    return error("reflectance-number", [row, name], `${place}: "${cell}" is no number`);
  if (value < 0)
    return error("reflectance-negative", [row, name], `${place}: reflectance ${value} is below 0`);
  if (value <= 1) return undefined;
  return value > 2
    ? error(
        "reflectance-percent",
        [row, name],
        `${place}: reflectance ${value} looks like per cent`,
        "Divide by 100: reflectance is a fraction, 0 to 1.",
      )
    : error(
        "reflectance-over-one",
        [row, name],
        `${place}: reflectance ${value} is over 1`,
        "Reflectance is a fraction, 0 to 1; leave out the light of fluorescence.",
      );
}

function takeCell(
  column: Column,
  cell: string | undefined,
  nm: number,
  row: number,
  decimal: DecimalMark,
): void {
  const { name } = column;
  let fault: Fault | undefined;
  if (cell === undefined)
    fault = error("reflectance-row-short", [row, name], `row ${row}: the row ends before column ${name}`);
  else if (cell.trim() === "") {
    if (column.firstNm !== undefined) column.emptyRow ??= row;
    return;
  } else {
    const value = csvNumber(cell, decimal);
    fault = cellFault(cell, value, row, name);
    if (column.emptyRow !== undefined) {
      column.faults.push(
        error("reflectance-gap", [column.emptyRow, name], `row ${column.emptyRow}, column ${name}: no value`),
      );
      column.emptyRow = undefined;
    }
    column.firstNm ??= nm;
    column.values.push(value ?? Number.NaN);
  }
  if (fault === undefined) return;
  if (column.faults.at(-1)?.code === fault.code) column.more++;
  else column.faults.push(fault);
}

/** What is wrong with a wavelength after the ones before it. */
function wavelengthFault(
  cell: string,
  nm: number | undefined,
  before: number | undefined,
  step: number | undefined,
  row: number,
): Fault | undefined {
  const path = [row, wavelengthColumn];
  const place = `row ${row}, column ${wavelengthColumn}`;
  if (nm === undefined) return error("wavelength-number", path, `${place}: "${cell}" is no number`);
  if (nm % 5 !== 0)
    return error(
      "wavelength-grid",
      path,
      `${place}: ${nm} nm is no multiple of 5 nm`,
      "Give 5 or 10 nm steps.",
    );
  if (before === undefined) return undefined;
  if (nm <= before)
    return error(
      "wavelength-order",
      path,
      `${place}: ${nm} nm comes after ${before} nm`,
      "Sort by wavelength.",
    );
  if (step === undefined && nm - before > 10)
    return error(
      "wavelength-step",
      path,
      `${place}: ${nm} nm follows ${before} nm`,
      "Give 5 or 10 nm steps.",
    );
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
function columnFaults(column: Column, stepNm: number): readonly Fault[] {
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
      [1, name],
      `column ${name} ${spans}`,
      `Give at least ${widest.from} to ${widest.to} nm.`,
    ),
  ];
}

/**
 * Starts reading reflectance curves from a file with a column of wavelengths and one column a sample, 0..1,
 * at 5 or 10 nm steps over 400 to 700 nm or wider. A fault names row and column and spoils only its sample;
 * a fault of the wavelengths spoils all. Empty cells before and after a sample's values are no fault.
 */
export function readReflectance(header: readonly string[], decimal: DecimalMark): Outcome<ReflectanceReader> {
  const names = header.map((name) => name.trim());
  const at = names.indexOf(wavelengthColumn);
  if (at < 0)
    return failed(
      error(
        "wavelength-column-missing",
        [1, wavelengthColumn],
        `row 1: there is no column ${wavelengthColumn}`,
        `The first row must name ${wavelengthColumn} and each sample.`,
      ),
    );
  const doubled = names.filter((name, i) => names.indexOf(name) !== i || name === "");
  if (doubled.length > 0)
    return failed(
      ...doubled.map((name) =>
        error(
          "reflectance-column-name",
          [1, name],
          `row 1: column name "${name}" is empty or stands there twice`,
        ),
      ),
    );
  if (names.length < 2)
    return failed(error("reflectance-no-sample", [1], "row 1: there is no column of a sample"));

  const columns: Column[] = names.flatMap((name, i) =>
    i === at
      ? []
      : [{ name, at: i, values: [], firstNm: undefined, emptyRow: undefined, faults: [], more: 0 }],
  );
  const faults: Fault[] = [];
  let before: number | undefined;
  let stepNm: number | undefined;
  return done({
    take: (fields, row) => {
      const cell = fields[at] ?? "";
      const nm = csvNumber(cell, decimal);
      const fault = wavelengthFault(cell, nm, before, stepNm, row);
      if (fault !== undefined) faults.push(fault);
      else if (before !== undefined) stepNm ??= nm! - before;
      for (const column of columns) takeCell(column, fields[column.at], nm ?? Number.NaN, row, decimal);
      if (fields.length > names.length && fields.slice(names.length).some((extra) => extra.trim() !== ""))
        faults.push(
          error("reflectance-row-long", [row], `row ${row}: more cells than the header has columns`),
        );
      if (nm !== undefined) before = nm;
    },
    end: () => {
      const step = stepNm ?? 10;
      const found = columns.map((column) => ({ column, faults: columnFaults(column, step) }));
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
