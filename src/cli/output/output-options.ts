import { done, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { CsvStyle } from "../../report/csv-style.js";
import { type FormatName, formatOf } from "../../report/format/formats.js";
import { usage } from "../usage.js";

/** The options that every command has, checked. */
export interface OutputOptions {
  readonly format: FormatName;
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

/** ".txt, .json or .csv" of the formats of a command. */
const endingsSaid = (formats: readonly FormatName[]): string =>
  formats
    .map((name) => `.${formatOf(name).endings[0]}`)
    .join(", ")
    .replace(/, (?=[^,]*$)/, " or ");

/** The format by the ending of the output file; text without a file. */
function formatOfFile(out: string | undefined, formats: readonly FormatName[]): Outcome<FormatName> {
  if (out === undefined || out === "-") return done("text");
  const ending = /[^/\\]\.([^./\\]+)$/.exec(out)?.[1]?.toLowerCase();
  const format = formats.find((name) => ending !== undefined && formatOf(name).endings.includes(ending));
  return format === undefined
    ? failed(
        usage(
          "--out",
          ending === undefined
            ? `"${out}" has no ending that names a format`
            : `this command has no format for files that end in .${ending}`,
          `let the name end in ${endingsSaid(formats)}, or add --format`,
        ),
      )
    : done(format);
}

/** The format that is asked for, by its name or by that of the output file. */
function formatAsked({ format, out }: RawOutputOptions, formats: readonly FormatName[]): Outcome<FormatName> {
  if (out === "") return failed(usage("--out", "the file has no name", "write --out FILE"));
  if (format === undefined) return formatOfFile(out, formats);
  const known = formats.find((name) => name === format);
  return known === undefined
    ? failed(
        usage(
          "--format",
          `"${format}" is not a format of this command`,
          `write one of ${formats.join(", ")}`,
        ),
      )
    : done(known);
}

/**
 * Checks the options that every command has against the formats this one can write. A command that writes CSV beside its
 * result takes the options of CSV with any format.
 */
export function checkOutput(
  raw: RawOutputOptions,
  { formats, writesCsv = false }: { readonly formats: readonly FormatName[]; readonly writesCsv?: boolean },
): Outcome<OutputOptions> {
  const asked = formatAsked(raw, formats);
  const faults: Fault[] = [...asked.faults];
  const separated = asked.ok && !writesCsv ? formatOf(asked.value).delimiter : undefined;
  if (separated !== undefined && separated !== "user" && raw.delimiter !== undefined)
    faults.push(usage("--delimiter", "only CSV has a delimiter to choose", "add --format csv"));
  if (separated === null && raw.decimal !== undefined)
    faults.push(usage("--decimal", "only CSV and TSV have a decimal sign to choose", "add --format csv"));
  if (separated === null && raw.bom === true)
    faults.push(usage("--bom", "only CSV and TSV take a byte order mark", "add --format csv"));
  if (raw.decimal !== undefined && raw.decimal !== "comma" && raw.decimal !== "point")
    faults.push(usage("--decimal", `"${raw.decimal}" is not a decimal sign`, "write comma or point"));
  const comma = raw.decimal === "comma";
  const delimiter = delimiterOf(raw, comma, asked.ok && formatOf(asked.value).delimiter === "format");
  faults.push(...delimiter.faults);
  if (faults.length > 0 || !asked.ok || !delimiter.ok) return failed(...faults);
  return done({
    format: asked.value,
    ...(raw.out === undefined || raw.out === "-" ? {} : { out: raw.out }),
    set: raw.set ?? [],
    strict: raw.strict === true,
    quiet: raw.quiet === true,
    colour: raw.color !== false,
    csv: { delimiter: delimiter.value, decimal: comma ? "," : ".", bom: raw.bom === true },
  });
}
