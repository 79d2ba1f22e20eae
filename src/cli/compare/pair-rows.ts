import { append } from "../../core/append.js";
import { pairColumnNames, pairReader } from "../../core/colour/csv/pairs-csv.js";
import { compareLab } from "../../core/colour/difference/compare-colours.js";
import type { CsvRow } from "../../core/csv/csv-format.js";
import { type CsvHeader, csvHeader, noHeader } from "../../core/csv/csv-header.js";
import { csvNumbers } from "../../core/csv/csv-number.js";
import { error, type Fault } from "../../core/fault.js";
import { addedNames } from "../../report/compare/added-columns.js";
import type { PairHeader, PairRow } from "../../report/compare/pair.js";
import { readRows } from "../csv/read-rows.js";
import { readFault } from "../files/read-text.js";
import type { Io } from "../io.js";

/** The good rows of some, and what is wrong with the others, both in order. */
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

/** Columns of the file with the name of an added one. */
const taken = ({ row, names }: CsvHeader): Fault[] =>
  names
    .filter((name) => addedNames.includes(name))
    .map((name) =>
      error(
        "pairs-column-taken",
        ["row", row, name],
        `row ${row}: column ${name} has the name of one that is added`,
        "rename it or leave it out",
      ),
    );

/** Compares rows one by one under a header. */
function comparer(header: CsvHeader): (rows: readonly CsvRow[]) => SomeRows {
  const read = pairReader(header, csvNumbers());
  return (some) => {
    const rows: PairRow[] = [];
    const faults: Fault[] = [];
    for (const { row, fields } of some) {
      const pair = read(fields, row);
      if (!pair.ok) append(faults, pair.faults);
      else {
        const cells = header.names.map((_name, i) => fields[i] ?? "");
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
        const header = csvHeader(head, pairColumnNames);
        if (!header.ok) return listener.broken(header.faults);
        const { names, at } = header.value;
        const wrong = taken(header.value);
        if (wrong.length > 0) return listener.broken(wrong);
        listener.header({ names, columns: pairColumnNames.map((name) => at(name)!) });
        compare = comparer(header.value);
        rows = others;
      }
      yield compare(rows);
    }
  } catch (thrown) {
    return listener.broken([readFault(path, thrown)]);
  }
  if (cut !== undefined) listener.broken([cut]);
  else if (compare === undefined) listener.broken([noHeader(pairColumnNames.join())]);
}
