import { isWavelength, readReflectance } from "../../core/colour/csv/reflectance-csv.js";
import { wavelengthsOf } from "../../core/colour/spectrum/grid.js";
import { csvHeader } from "../../core/csv/csv-header.js";
import { csvNumbers } from "../../core/csv/csv-number.js";
import { readCsv } from "../../core/csv/read-csv.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Colour } from "../../core/model/batch.js";

/** A measured curve. */
export type Reflectance = Extract<Colour, { kind: "reflectance" }>;

const form =
  "write a header line wavelength_nm,reflectance and below it lines such as 400,0.312; for percent name the column reflectance_percent";

const fault = (message: string, help = form): Outcome<never> =>
  failed(error("reflectance", [], message, help));

/** Reads a reflectance curve from the text of a CSV file: wavelength in nm, then reflectance from 0 to 1, or in percent if the column says so. */
export function parseReflectance(file: string, text: string): Outcome<Reflectance> {
  const refused = ([first]: readonly Fault[]): Outcome<never> =>
    fault(`${file}, ${first!.message}`, first!.help ?? form);
  const csv = readCsv(text);
  if (!csv.ok) return refused(csv.faults);
  const header = csvHeader(csv.value.header ?? { row: 1, fields: [] });
  if (!header.ok) return refused(header.faults);
  const [first = "", ...others] = header.value.names;
  if (!isWavelength(first) || others.length !== 1)
    return fault(`${file} does not begin with the two columns of a reflectance curve`);
  const reader = readReflectance(header.value, csvNumbers());
  if (!reader.ok) return refused(reader.faults);
  csv.value.rows.forEach(reader.value.take);
  const { samples, faults } = reader.value.end();
  if (faults.length > 0) return refused(faults);
  const { firstNm, stepNm, reflectance } = samples[0]!.spectrum;
  return done({
    kind: "reflectance",
    wavelengthsNm: wavelengthsOf({ firstNm, stepNm, count: reflectance.length }),
    reflectance: Array.from(reflectance),
  });
}
