import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { PlanResults } from "../../core/plan/results/plan-results.js";
import type { Report } from "../report.js";
import type { Column, Table } from "../table.js";
import { restsInWords } from "../words/assumed.js";
import { type ResultColumn, resultColumns } from "./columns.js";
import { type KeyColumn, keyColumn, type VariedKey } from "./key-columns.js";

/** One combination: the text of each value, and its result. */
export interface SweepRow {
  readonly values: readonly string[];
  readonly results: PlanResults | null;
  readonly error: { readonly code: string; readonly message: string } | null;
}

/** The shortest end of each key that no other key has: "volume" of "tanks.six.volume". */
function shortNames(varied: readonly VariedKey[]): string[] {
  const end = ({ names }: VariedKey, count: number): string => names.slice(-count).join(".");
  return varied.map((one) => {
    for (let count = 1; count < one.names.length; count++)
      if (varied.filter((other) => end(other, count) === end(one, count)).length === 1)
        return end(one, count);
    return one.key;
  });
}

/** Columns by name, or by the name without the unit or currency that ends it; every unknown one is a fault. */
function pick(columns: readonly ResultColumn[], names: readonly string[]): Outcome<ResultColumn[]> {
  const known = columns.map(({ key }) => key);
  const found = names.map(
    (name) =>
      columns.find(({ key }) => key === name) ??
      columns.find(({ key }) => key.startsWith(`${name}_`) && !key.slice(name.length + 1).includes("_")),
  );
  const unknown = names.filter((_, i) => found[i] === undefined);
  return unknown.length === 0
    ? done(found as ResultColumn[])
    : failed(
        ...unknown.map((name) =>
          error(
            "unknown-column",
            [],
            `--result: there is no result "${name}"`,
            `the results are ${known.join(", ")}`,
          ),
        ),
      );
}

function table(
  keys: readonly (Pick<KeyColumn, "column"> & Partial<KeyColumn>)[],
  columns: readonly ResultColumn[],
  rows: readonly SweepRow[],
): Table {
  const error = rows.some((row) => row.error !== null);
  return {
    columns: [
      ...keys.map(({ column }) => column),
      ...columns,
      ...(error ? [{ key: "error", title: "error" }] : []),
    ],
    rows: rows.map(({ values, results, error: why }) => [
      ...values.map((text, i) => keys[i]!.cells?.get(text) ?? text),
      ...columns.map(({ of }) => (results === null ? null : of(results))),
      ...(error ? [why?.code ?? ""] : []),
    ]),
  };
}

/** Results over every combination, in every format; `wanted` names the columns of tables. */
export function sweepReport(
  varied: readonly VariedKey[],
  rows: readonly SweepRow[],
  { currency, wanted }: { readonly currency: string | null; readonly wanted: readonly string[] | undefined },
): Outcome<Report> {
  const worked = rows.flatMap(({ results }) => results ?? []);
  const columns = resultColumns(worked, currency);
  const picked = wanted === undefined ? done(columns) : pick(columns, wanted);
  if (!picked.ok) return picked;
  const short = shortNames(varied);
  const asWritten = varied.map(({ key }, i) => ({
    column: { key, title: short[i]!, align: "left", tone: "strong" } satisfies Column,
  }));
  const rests = new Set(worked.flatMap(({ restsOnAssumed }) => restsOnAssumed));
  const read =
    wanted === undefined
      ? columns.filter((column) => column.brief === true && new Set(worked.map(column.of)).size > 1)
      : picked.value;
  const alike =
    wanted === undefined
      ? sameEverywhere(
          columns.filter((c) => c.brief === true),
          worked,
        )
      : "";
  return done({
    name: "sweep",
    data: {
      varied,
      currency,
      combinations: rows.map(({ values, results, error: why }) => ({
        values: Object.fromEntries(varied.map(({ key }, i) => [key, values[i]])),
        results,
        error: why,
      })),
    },
    rows: table(varied.map(keyColumn), picked.value, rows),
    blocks: [
      { kind: "table", table: table(asWritten, read, rows) },
      ...(alike === "" ? [] : [{ kind: "paragraph" as const, text: `Alike in all: ${alike}.` }]),
      ...(rests.size === 0
        ? []
        : [
            {
              kind: "paragraph" as const,
              text: `Times, costs, dye and bath life rest on an assumed ${restsInWords([...rests])}.`,
            },
          ]),
    ],
  });
}

/** Results that no value moves, in words: a table need not repeat them. */
function sameEverywhere(columns: readonly ResultColumn[], worked: readonly PlanResults[]): string {
  return columns
    .filter((column) => new Set(worked.map(column.of)).size === 1 && column.of(worked[0]!) !== null)
    .map((column) => {
      const value = column.of(worked[0]!);
      return `${column.title} ${typeof value === "number" ? (column.show ?? column.digits ?? String)(value) : value}`;
    })
    .join(", ");
}
