import { parse } from "csv-parse/sync";
import { csvNumber, type DecimalMark } from "../../core/colour/csv/csv-number.js";
import { readReflectance, wavelengthColumn } from "../../core/colour/csv/reflectance-csv.js";
import { wavelengthsOf } from "../../core/colour/spectrum/grid.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Colour } from "../../core/model/batch.js";

/** A measured curve. */
export type Reflectance = Extract<Colour, { kind: "reflectance" }>;

const form =
  "write a header line wavelength_nm,reflectance and below it lines such as 400,0.312; for percent name the column reflectance_percent";

const fault = (message: string, help = form): Outcome<never> =>
  failed(error("reflectance", [], message, help));

/** Cells of a column in percent as fractions; what is no number stays for the reader to refuse. */
function asFraction(cell: string, decimal: DecimalMark): string {
  const value = csvNumber(cell, decimal);
  if (value === undefined) return cell;
  const text = String(value / 100);
  return decimal === "comma" ? text.replace(".", ",") : text;
}

/** Reads a reflectance curve from the text of a CSV file: wavelength in nm, then reflectance of 0 to 1, or in percent where the column says so. */
export function parseReflectance(file: string, text: string): Outcome<Reflectance> {
  const header = text.slice(0, 1000).split("\n", 1)[0] ?? "";
  const semicolon = header.includes(";");
  const decimal: DecimalMark = semicolon && /\d,\d/.test(text) ? "comma" : "point";
  let rows: string[][];
  try {
    rows = parse(text, {
      bom: true,
      delimiter: semicolon ? ";" : header.includes("\t") ? "\t" : ",",
      skip_empty_lines: true,
      trim: true,
      relax_column_count: true,
      comment: "#",
    });
  } catch {
    return fault(`${file} is no CSV file`);
  }
  const [names, ...data] = rows;
  if (names === undefined || !/wavelength|^nm$/i.test(names[0] ?? "") || names.length !== 2)
    return fault(`${file} does not begin with the two columns of a reflectance curve`);
  const percent = /percent|%/i.test(names[1]!);
  const reader = readReflectance([wavelengthColumn, names[1]!], decimal);
  if (!reader.ok) return fault(`${file}, ${reader.faults[0]!.message}`);
  for (const [i, [nm = "", value = "", ...more]] of data.entries())
    reader.value.take([nm, percent ? asFraction(value, decimal) : value, ...more], i + 2);
  const { samples, faults } = reader.value.end();
  const [first] = faults;
  if (first) return fault(`${file}, ${first.message}`, first.help ?? form);
  const [sample] = samples;
  if (!sample) return fault(`${file} holds no curve`);
  const { firstNm, stepNm, reflectance } = sample.spectrum;
  return done({
    kind: "reflectance",
    wavelengthsNm: wavelengthsOf({ firstNm, stepNm, count: reflectance.length }),
    reflectance: Array.from(reflectance),
  });
}
