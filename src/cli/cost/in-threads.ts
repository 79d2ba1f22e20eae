import type { Answer, Io, Thread } from "../io.js";
import type { BatchFile } from "./batch-files.js";
import { type CostJob, type FileCosts, fileCosting } from "./file-costs.js";

/** Files that a thread is given at a time, and parcels that wait for each. */
const parcelSize = 16;
const parcelsAhead = 3;
/** From so many files on, two threads save more time than they take to get going; drawing takes long for each file. */
const manyFiles = 4000;
/** Each takes some 100 MiB, and one reader of their results keeps up with no more. */
const mostThreads = 4;

async function* parcelled(
  files: readonly BatchFile[],
  size: number,
  threads: readonly Thread[],
): AsyncGenerator<FileCosts> {
  const waiting: Promise<Answer>[] = [];
  let given = 0;
  for (let taken = 0; taken * size < files.length; taken++) {
    while (waiting.length < parcelsAhead * threads.length && given * size < files.length) {
      const parcel = files.slice(given * size, (given + 1) * size);
      const answer = threads[given % threads.length]!.ask(parcel);
      // A failure is met when its turn comes.
      answer.catch(() => {});
      waiting.push(answer);
      given++;
    }
    yield* (await waiting.shift())!.answer as readonly FileCosts[];
  }
}

/**
 * Costs files in their order: here, or many of them in threads beside this one, whose results are the same. A file
 * is held in memory while it waits for its turn only.
 */
export async function* costFiles(
  files: readonly BatchFile[],
  job: CostJob,
  io: Io,
): AsyncGenerator<FileCosts> {
  const drawn = job.task.spread !== undefined;
  const parcel = drawn ? 1 : parcelSize;
  const worthIt = files.length >= (drawn ? 2 : manyFiles) && files.every(({ name }) => name !== "-");
  const atMost = Math.min(mostThreads, Math.ceil(files.length / parcel));
  const threads = worthIt ? ((await io.threads?.("cost", job, atMost)) ?? []) : [];
  if (threads.length === 0) {
    const costs = fileCosting(job, io);
    for (const file of files) yield await costs(file);
    return;
  }
  try {
    yield* parcelled(files, parcel, threads);
  } finally {
    await Promise.all(threads.map((thread) => thread.stop()));
  }
}
