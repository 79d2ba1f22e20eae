import type { DecimalMark } from "../../core/colour/csv/csv-number.js";
import { type PairColumns, pairColumns, pairRow } from "../../core/colour/csv/pairs-csv.js";
import { compareLab } from "../../core/colour/difference/compare-colours.js";
import { error, type Fault } from "../../core/fault.js";
import { addedNames } from "../../report/compare/added-columns.js";
import type { PairHeader, PairRow } from "../../report/compare/pair.js";
import { type CsvRow, readRows } from "../csv/read-rows.js";
import { decimalShown } from "../csv/sniff.js";
import { readFault } from "../files/read-text.js";
import type { Io } from "../io.js";

/** What came of some rows: the good ones and what is wrong with the others, both in order. */
export interface SomeRows {
  readonly rows: readonly PairRow[];
  readonly faults: readonly Fault[];
}

/** Listens while a file of pairs is read. */
export interface PairListener {
  /** The header, before the first row. */
  readonly header: (header: PairHeader) => void;
  /** Nothing that follows can be read. */
  readonly broken: (faults: readonly Fault[]) => void;
}

/** Columns of the file that would stand beside an added one of the same name. */
const taken = (names: readonly string[]): Fault[] =>
  names
    .filter((name) => addedNames.includes(name))
    .map((name) =>
      error(
        "pairs-column-taken",
        [],
        `row 1: column ${name} has the name of one that is added`,
        "rename it or leave it out",
      ),
    );

const long = (row: number): Fault =>
  error(
    "pairs-row-long",
    [row],
    `row ${row}: more cells than the header has columns`,
    'a decimal comma needs another delimiter, such as ";", or quotes',
  );

/** Compares rows one by one under a header. The decimal sign is that of the first number that shows one. */
function comparer(names: readonly string[], columns: PairColumns): (rows: readonly CsvRow[]) => SomeRows {
  let decimal: DecimalMark | undefined;
  return (some) => {
    const rows: PairRow[] = [];
    const faults: Fault[] = [];
    for (const { row, fields } of some) {
      for (let i = 0; decimal === undefined && i < columns.length; i++)
        decimal = decimalShown(fields[columns[i]!]);
      if (fields.length > names.length && fields.slice(names.length).some((cell) => cell.trim() !== "")) {
        faults.push(long(row));
        continue;
      }
      const pair = pairRow(fields, columns, row, decimal ?? "point");
      if (!pair.ok) faults.push(...pair.faults);
      else {
        const cells = names.map((_name, i) => fields[i] ?? "");
        rows.push({ row, cells, ...pair.value, ...compareLab(pair.value.standard, pair.value.sample) });
      }
    }
    return { rows, faults };
  };
}

/** Reads a file of pairs ("-" for stdin) and compares them, some rows at a time. */
export async function* comparedRows(path: string, io: Io, listener: PairListener): AsyncGenerator<SomeRows> {
  let compare: ReturnType<typeof comparer> | undefined;
  let cut: Fault | undefined;
  const cutOff = (fault: Fault): void => {
    cut = fault;
  };
  try {
    for await (let rows of readRows(io.read(path), cutOff)) {
      if (compare === undefined) {
        const [head, ...others] = rows;
        if (head === undefined) continue;
        const names = head.fields.map((name) => name.trim());
        const columns = pairColumns(names);
        const wrong = [...columns.faults, ...taken(names)];
        if (!columns.ok || wrong.length > 0) return listener.broken(wrong);
        listener.header({ names, columns: columns.value });
        compare = comparer(names, columns.value);
        rows = others;
      }
      yield compare(rows);
    }
  } catch (thrown) {
    return listener.broken([readFault(path, thrown)]);
  }
  if (cut !== undefined) listener.broken([cut]);
  else if (compare === undefined)
    listener.broken([
      error("pairs-empty", [], "there is no header row", "the first row names L1, a1, b1, L2, a2, b2"),
    ]);
}
