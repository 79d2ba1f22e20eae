import type { CsvHeader } from "../../csv/csv-header.js";
import { error, type Fault } from "../../fault.js";

/** What a column of a table of readings means, from its name. */
export type ColumnMeaning =
  | { readonly kind: "time"; readonly secondsPerUnit: number; readonly unit: string }
  | { readonly kind: "time-without-unit" }
  | { readonly kind: "ks" | "exhaustion" | "uptake" | "other" };

const timeUnits: readonly { readonly names: readonly string[]; readonly seconds: number }[] = [
  { names: ["s", "sec", "second", "seconds"], seconds: 1 },
  { names: ["min", "minute", "minutes"], seconds: 60 },
  { names: ["h", "hr", "hour", "hours"], seconds: 3600 },
  { names: ["d", "day", "days"], seconds: 86400 },
];

/**
 * The meaning of a column name: time_s, "time (min)", seconds; uptake, uptake_mg_per_g; ks, K/S; exhaustion.
 * @example
 * columnMeaning("time_min").secondsPerUnit // => 60
 * columnMeaning("Time [h]").unit // => "h"
 * columnMeaning("K/S").kind // => "ks"
 */
export function columnMeaning(name: string): ColumnMeaning {
  const words = name
    .toLowerCase()
    .split(/[^a-z0-9%]+/)
    .filter((word) => word !== "");
  const [first, second] = words;
  const named = first === "time" || first === "t";
  const unit = timeUnits.find(({ names }) => names.includes(words.at(-1) ?? ""));
  if (unit !== undefined && (named || (words.length === 1 && first !== unit.names[0])))
    return { kind: "time", secondsPerUnit: unit.seconds, unit: unit.names[0]! };
  if (named) return { kind: "time-without-unit" };
  if (first === "ks" || (first === "k" && second === "s")) return { kind: "ks" };
  if (first === "exhaustion") return { kind: "exhaustion" };
  return { kind: first === "uptake" ? "uptake" : "other" };
}

/** Where the two columns of a table of readings are. */
export interface ReadingColumns {
  readonly time: number;
  readonly secondsPerUnit: number;
  readonly unit: string;
  readonly uptake: number;
  readonly meaning: "ks" | "exhaustion" | "uptake" | "other";
}

/** Finds time and uptake in a header; a column with a known name goes before any other. */
export function findColumns(
  { row, names: header }: Pick<CsvHeader, "row" | "names">,
  wanted?: string,
): ReadingColumns | readonly Fault[] {
  const columns = header.map((name, index) => ({ name, index, meaning: columnMeaning(name) }));
  const place = ["row", row];
  const list = header.map((name) => `"${name}"`).join(", ");
  const times = columns.flatMap(({ index, meaning }) =>
    meaning.kind === "time" ? [{ index, meaning }] : [],
  );
  if (times.length !== 1) {
    const bare = columns.some(({ meaning }) => meaning.kind === "time-without-unit");
    const message = bare
      ? "the time column has no unit"
      : `${times.length === 0 ? "no" : "more than one"} time column among ${list}`;
    return [error("table-time-column", place, message, "name one column time_s, time_min, time_h or time_d")];
  }
  const rest = columns.filter(({ meaning }) => !meaning.kind.startsWith("time"));
  const known = rest.filter(({ meaning }) => meaning.kind !== "other");
  const fitting =
    wanted === undefined ? (known.length > 0 ? known : rest) : rest.filter((c) => c.name === wanted);
  if (fitting.length !== 1) {
    const message = `${fitting.length === 0 ? "no" : "more than one"} uptake column among ${list}`;
    return [error("table-uptake-column", place, message, "keep one column named uptake, ks or exhaustion")];
  }
  const { index, meaning } = times[0]!;
  return {
    time: index,
    secondsPerUnit: meaning.secondsPerUnit,
    unit: meaning.unit,
    uptake: fitting[0]!.index,
    meaning: fitting[0]!.meaning.kind as ReadingColumns["meaning"],
  };
}
