import type { Colour } from "../core/batch/model.js";
import { done, error, failed, type Outcome } from "../core/fault.js";
import type { ReadFile } from "./include.js";

/** A measured curve. */
export type Reflectance = Extract<Colour, { kind: "reflectance" }>;

const form =
  "write a header line wavelength_nm,reflectance and below it lines such as 400,0.312; for percent name the column reflectance_percent";

const fault = (message: string, help = form): Outcome<never> =>
  failed(error("reflectance", [], message, help));

/** Reads a reflectance curve from the text of a CSV file: wavelength in nm, then reflectance of 0 to 1, or in percent where the column says so. */
export async function parseReflectance(file: string, text: string): Promise<Outcome<Reflectance>> {
  const { parse } = await import("csv-parse/sync");
  const header = text.slice(0, 1000).split("\n", 1)[0] ?? "";
  const semicolon = header.includes(";");
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
  const wavelengthsNm: number[] = [];
  const reflectance: number[] = [];
  for (const [i, row] of data.entries()) {
    const [wavelength, value] = row.map((cell) =>
      cell === "" ? Number.NaN : Number(semicolon ? cell.replace(",", ".") : cell),
    );
    const line = `line ${i + 2} of ${file}`;
    if (row.length !== 2 || !Number.isFinite(wavelength) || !Number.isFinite(value))
      return fault(`${line} holds no two numbers`);
    if (wavelength! <= (wavelengthsNm.at(-1) ?? 0)) return fault(`${line}: the wavelengths do not rise`);
    const share = percent ? value! / 100 : value!;
    if (share < 0 || share > 2) return fault(`${line}: ${value} is no reflectance`);
    wavelengthsNm.push(wavelength!);
    reflectance.push(share);
  }
  if (wavelengthsNm.length < 10 || wavelengthsNm[0]! > 410 || wavelengthsNm.at(-1)! < 690)
    return fault(`${file} does not reach from 400 nm to 700 nm`, "give at least every 20 nm from 400 to 700");
  return done({ kind: "reflectance", wavelengthsNm, reflectance });
}

/** Reads reflectance files through the same function that reads batch files. */
export const reflectanceReader =
  (readFile: ReadFile) =>
  async (file: string): Promise<Outcome<Reflectance>> => {
    let text: string;
    try {
      text = await readFile(file);
    } catch {
      return fault(`${file} cannot be read`, "the name is relative to the file that holds it");
    }
    return parseReflectance(file, text);
  };
