import { append } from "../../core/append.js";
import type { Fault } from "../../core/fault.js";
import type { Reading } from "../../core/model/colour.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { type Limit, type PairHeader, type PairRow, verdictOf } from "../../report/compare/pair.js";
import { pairRows } from "../../report/compare/pair-rows.js";
import { pairsReport } from "../../report/compare/pairs-report.js";
import { pairsSaid } from "../../report/compare/pairs-said.js";
import type { CsvStyle } from "../../report/csv-style.js";
import { formatOf } from "../../report/format/formats.js";
import type { RowFormat, RowWriter } from "../../report/format/row-format.js";
import { type Result, type Stream, unplaced } from "../command.js";
import { mostShown } from "../csv/most-shown.js";
import type { Io } from "../io.js";
import type { OutputOptions } from "../output/output-options.js";
import { faultByRow, notShown } from "./bad-rows.js";
import { comparedRows } from "./pair-rows.js";

/** What is asked of a file of pairs. */
export interface PairsTask {
  /** "-" for stdin. */
  readonly file: string;
  /** What both colours of every row were read under. */
  readonly reading: Reading;
  readonly limit?: Limit;
  /** End at the first row that cannot be read. */
  readonly failFast: boolean;
}

/** Good rows and what is wrong with the others, counted on the way. */
interface Counted {
  header: PairHeader | undefined;
  pairs: number;
  /** Rows that cannot be read. */
  unread: number;
  passed: number;
  /** Why the reading ended early; empty where it did not. */
  broken: readonly Diagnostic[];
}

/** Rows of the file, some at a time, with the diagnostics of the bad ones. */
async function* counting(
  { file, limit, failFast }: PairsTask,
  io: Io,
  counted: Counted,
): AsyncGenerator<{ readonly rows: readonly PairRow[]; readonly bad: readonly Diagnostic[] }> {
  const placed = (faults: readonly Fault[]): Diagnostic[] =>
    faults.map((fault) => unplaced({ ...fault, path: fault.code === "read" ? [] : [file] }));
  const listener = {
    header: (header: PairHeader): void => {
      counted.header = header;
    },
    broken: (faults: readonly Fault[]): void => {
      counted.broken = placed(faults);
    },
  };
  for await (const { rows, faults } of comparedRows(file, io, listener)) {
    const [first] = faults;
    const cut = failFast && first !== undefined ? Number(first.path[1]) : Number.POSITIVE_INFINITY;
    const good = cut === Number.POSITIVE_INFINITY ? rows : rows.filter(({ row }) => row < cut);
    const bad = faultByRow(faults.filter(({ path }) => !(Number(path[1]) > cut)));
    const shown = bad.slice(0, Math.max(0, mostShown - counted.unread));
    counted.pairs += good.length;
    counted.unread += bad.length;
    if (limit !== undefined) for (const row of good) if (verdictOf(row, limit) === "pass") counted.passed++;
    yield { rows: good, bad: placed(shown).map((diagnostic) => ({ ...diagnostic, oneLine: true })) };
    if (bad.length > 0 && failFast) return;
  }
}

/** How many bad rows are not shown, and why the reading ended early. */
const ending = ({ broken, unread }: Counted, { file }: PairsTask): readonly Diagnostic[] => [
  ...notShown(file, unread),
  ...broken,
];

const start = (): Counted => ({ header: undefined, pairs: 0, unread: 0, passed: 0, broken: [] });

const summaryOf = ({ pairs, unread, passed }: Counted, limit: Limit | undefined) => ({
  pairs,
  unread,
  ...(limit === undefined ? {} : { passed }),
});

async function* streamed(task: PairsTask, io: Io, format: RowFormat, csv: CsvStyle): Stream {
  const counted = start();
  const { limit, failFast } = task;
  let writer: RowWriter<readonly PairRow[]> | undefined;
  for await (const { rows, bad } of counting(task, io, counted)) {
    const first = writer === undefined;
    writer ??= format.open(pairRows(counted.header!, limit), csv);
    yield `${first ? writer.head() : ""}${writer.rows(rows)}`;
    if (bad.length > 0) yield bad;
  }
  const summary = summaryOf(counted, limit);
  const headed = writer !== undefined;
  if (writer !== undefined) yield* writer.tail({ summary });
  const { broken, unread } = counted;
  return {
    diagnostics: ending(counted, task),
    ...(unread > 0 || broken.length > 0 ? { status: 2 } : {}),
    missed: counted.passed < counted.pairs && limit !== undefined,
    spoilt: !headed || (failFast && unread > 0),
    ...(!format.besideRows && headed && limit !== undefined ? { note: pairsSaid(summary, limit) } : {}),
  };
}

async function gathered(task: PairsTask, io: Io): Promise<Result> {
  const counted = start();
  const { limit, reading, failFast } = task;
  const rows: PairRow[] = [];
  const diagnostics: Diagnostic[] = [];
  for await (const some of counting(task, io, counted)) {
    for (const row of some.rows) rows.push(row);
    for (const fault of some.bad) diagnostics.push(fault);
  }
  append(diagnostics, ending(counted, task));
  if (counted.header === undefined || (failFast && diagnostics.length > 0)) return { diagnostics };
  return {
    diagnostics,
    report: pairsReport(counted.header, rows, summaryOf(counted, limit), {
      reading,
      ...(limit === undefined ? {} : { limit }),
    }),
    missed: limit !== undefined && counted.passed < counted.pairs,
    ...(diagnostics.length > 0 ? { status: 2 } : {}),
  };
}

/**
 * Compares every row of a file. They are written as they come, where the format can do so; text and markdown need
 * all rows at once to lay out their table.
 */
export async function comparePairs(task: PairsTask, { format, csv }: OutputOptions, io: Io): Promise<Result> {
  const rows = await formatOf(format).rows?.();
  return rows === undefined ? gathered(task, io) : { diagnostics: [], stream: streamed(task, io, rows, csv) };
}
