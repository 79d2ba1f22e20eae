import { done, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { CsvStyle } from "../../report/format/csv.js";
import { usage } from "../usage.js";
import type { Format } from "./format.js";

/** The options that every command has, checked. */
export interface OutputOptions {
  readonly format: Format;
  /** File to write instead of stdout. */
  readonly out?: string;
  /** `key.path=value`, in the order given. */
  readonly set: readonly string[];
  readonly strict: boolean;
  readonly quiet: boolean;
  readonly colour: boolean;
  readonly csv: CsvStyle;
}

/** The same as commander hands them over. */
export interface RawOutputOptions {
  readonly format?: string;
  readonly out?: string;
  readonly set?: readonly string[];
  readonly strict?: boolean;
  readonly quiet?: boolean;
  readonly color?: boolean;
  readonly delimiter?: string;
  readonly decimal?: string;
  readonly bom?: boolean;
}

const named: Readonly<Record<string, string>> = {
  tab: "\t",
  "\\t": "\t",
  comma: ",",
  semicolon: ";",
  space: " ",
  bar: "|",
};
function delimiterOf(raw: RawOutputOptions, comma: boolean, tabs: boolean): Outcome<string> {
  if (raw.delimiter === undefined) return done(tabs ? "\t" : comma ? ";" : ",");
  const delimiter = named[raw.delimiter] ?? raw.delimiter;
  if (!/^[\t ,;:|!/~^&#]$/.test(delimiter))
    return failed(
      usage("--delimiter", `"${raw.delimiter}" cannot separate columns`, "write one of , ; | : or tab"),
    );
  if (comma && delimiter === ",")
    return failed(
      usage("--delimiter", "a comma cannot separate both columns and decimals", 'write --delimiter ";"'),
    );
  return done(delimiter);
}

const endings: Readonly<Record<string, Format>> = {
  csv: "csv",
  tsv: "tsv",
  json: "json",
  ndjson: "ndjson",
  jsonl: "ndjson",
  md: "markdown",
  html: "html",
  svg: "svg",
};

/** The format that the name of the output file asks for, where the command has it; else text. */
function formatOf(out: string | undefined, formats: readonly Format[]): Format {
  const format = endings[/\.([a-z]+)$/i.exec(out ?? "")?.[1]?.toLowerCase() ?? ""];
  return format !== undefined && formats.includes(format) ? format : "text";
}

/** Checks the options that every command has against the formats this one can write. */
export function checkOutput(raw: RawOutputOptions, formats: readonly Format[]): Outcome<OutputOptions> {
  const faults: Fault[] = [];
  const wanted = raw.format ?? formatOf(raw.out, formats);
  const format = formats.find((known) => known === wanted);
  if (format === undefined)
    faults.push(
      usage("--format", `"${raw.format}" is no format of this command`, `write one of ${formats.join(", ")}`),
    );
  const sheet = format === "csv" || format === "tsv";
  if (format !== undefined && format !== "csv" && raw.delimiter !== undefined)
    faults.push(usage("--delimiter", "only CSV has a delimiter to choose", "add --format csv"));
  if (format !== undefined && !sheet && raw.decimal !== undefined)
    faults.push(usage("--decimal", "only CSV and TSV have a decimal sign to choose", "add --format csv"));
  if (format !== undefined && !sheet && raw.bom === true)
    faults.push(usage("--bom", "only CSV and TSV take a byte order mark", "add --format csv"));
  if (raw.decimal !== undefined && raw.decimal !== "comma" && raw.decimal !== "point")
    faults.push(usage("--decimal", `"${raw.decimal}" is no decimal sign`, "write comma or point"));
  if (raw.out === "") faults.push(usage("--out", "the file has no name", "write --out FILE"));
  const comma = raw.decimal === "comma";
  const delimiter = delimiterOf(raw, comma, format === "tsv");
  faults.push(...delimiter.faults);
  if (faults.length > 0 || format === undefined || !delimiter.ok) return failed(...faults);
  return done({
    format,
    ...(raw.out === undefined || raw.out === "-" ? {} : { out: raw.out }),
    set: raw.set ?? [],
    strict: raw.strict === true,
    quiet: raw.quiet === true,
    colour: raw.color !== false,
    csv: { delimiter: delimiter.value, decimal: comma ? "," : ".", bom: raw.bom === true },
  });
}
