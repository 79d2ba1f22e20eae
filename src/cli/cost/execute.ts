import type { CostSnapshot } from "../../core/cost/history/snapshot.js";
import { error } from "../../core/fault.js";
import { costColumns } from "../../report/cost/columns.js";
import { readCostSnapshot } from "../../report/cost/read-snapshot.js";
import { formatOf } from "../../report/format/formats.js";
import { columnPositions } from "../../report/select-columns.js";
import { type Execute, type Result, refused, unplaced } from "../command.js";
import { readNamed } from "../files/read-text.js";
import { sayLine } from "../output/say.js";
import { batchFiles } from "./batch-files.js";
import { type Costed, costed } from "./costed.js";
import { type Counts, noCounts } from "./counts.js";
import { gathered } from "./gathered.js";
import { costFiles } from "./in-threads.js";
import { progressOf } from "./progress.js";
import { streamed } from "./streamed.js";
import { readTask } from "./task.js";

/** Largest earlier report that is read [bytes]: some 100,000 orders. */
const largestReport = 128 * 1024 * 1024;

/** An earlier report, or why it cannot be read. */
async function earlier(
  path: string,
  io: Parameters<Execute>[1],
): Promise<{ readonly before: CostSnapshot } | Result> {
  const tooLarge = error(
    "too-large",
    ["--against", path],
    `the earlier report is larger than ${largestReport / 1024 ** 2} MiB`,
    "compare fewer batches at a time",
  );
  if ((io.sizeOf?.(path) ?? 0) > largestReport) return refused(tooLarge);
  const text = await readNamed(path, io, largestReport + 1);
  if (!text.ok) return refused(...text.faults.map((fault) => ({ ...fault, path: ["--against"] })));
  if (text.value.length > largestReport) return refused(tooLarge);
  const read = readCostSnapshot(text.value);
  return read.ok
    ? { before: read.value }
    : refused(...read.faults.map((fault) => ({ ...fault, path: ["--against", path] })));
}

/** What each order of one or many batches costs. */
export const execute: Execute = async (request, io) => {
  const read = readTask(request);
  if (!read.ok) return refused(...read.faults);
  const task = read.value;
  const { output } = request;
  if (task.columns !== undefined && task.against === undefined) {
    const bare = task.columns.map((name) => name.replace(/_[A-Z]{3}$/, ""));
    const known = columnPositions(costColumns(null, task.spread !== undefined), bare);
    if (!known.ok) return refused(...known.faults);
  }
  let before: CostSnapshot | undefined;
  if (task.against !== undefined) {
    const found = await earlier(task.against, io);
    if (!("before" in found)) return found;
    before = found.before;
  }
  const { files, faults } = await batchFiles(task.names, io);
  const early = faults.map(unplaced);
  // An exceeded limit then has a line of its own, which --quiet does not hide.
  const alone = files.length === 1 && !output.quiet;
  const counts: Counts = noCounts();
  const rows = before === undefined ? await formatOf(output.format).rows?.() : undefined;
  const ordersOnly = before !== undefined || rows?.besideRows === false;
  const progress = progressOf(files.length, output, io);
  async function* watched(): AsyncGenerator<Costed> {
    try {
      const job = { task, set: output.set, alone, ordersOnly };
      for await (const one of costed(costFiles(files, job, io), alone, counts)) {
        if (one.diagnostics.length > 0 || one.exceeded.length > 0) progress.clear();
        for (const line of one.exceeded) sayLine(line, io);
        yield one;
        progress.at(counts.costed + counts.bad);
      }
    } finally {
      progress.clear();
    }
  }
  if (rows !== undefined)
    return { diagnostics: [], stream: streamed(watched(), rows, task, output, counts, early, io.now) };
  return gathered(watched(), task, output, counts, early, before);
};
