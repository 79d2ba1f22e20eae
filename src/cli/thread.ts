import { availableParallelism } from "node:os";
import { parentPort, Worker, workerData } from "node:worker_threads";
import { watched } from "./files/own-input.js";
import type { Answer, Io, Thread } from "./io.js";
import { nodeIo } from "./node-io.js";

/** Starts a thread on a script of ours; it answers one question after the other, in their order. */
function startThread(script: URL, job: unknown): Thread {
  const worker = new Worker(script, { workerData: job });
  const waiting: { readonly settle: (answer: Answer) => void; readonly fail: (cause: unknown) => void }[] =
    [];
  let broken: { readonly cause: unknown } | undefined;
  const fail = (cause: unknown): void => {
    broken ??= { cause };
    for (const one of waiting.splice(0)) one.fail(cause);
  };
  worker.on("message", (answer) => waiting.shift()?.settle(answer));
  worker.on("error", fail);
  worker.on("exit", () => fail(new Error("a thread ended too early")));
  return {
    ask: (question) =>
      new Promise((settle, reject) => {
        if (broken !== undefined) return reject(broken.cause);
        waiting.push({ settle, fail: reject });
        worker.postMessage(question);
      }),
    stop: async () => void (await worker.terminate()),
  };
}

/** As many as the machine can run at once, up to a count; none where it can run one only. */
export function startThreads(script: URL, job: unknown, atMost: number): Thread[] {
  const count = Math.min(atMost, availableParallelism());
  return count < 2 ? [] : Array.from({ length: count }, () => startThread(script, job));
}

/** The other end: makes what answers from the job the thread was started on. A throw ends the thread and is reported. */
export function answerAll(make: (job: unknown, io: Io) => (question: unknown) => Promise<unknown>): void {
  const { io, reads } = watched(nodeIo());
  const answerTo = make(workerData, io);
  let last: Promise<void> = Promise.resolve();
  parentPort?.on("message", (question) => {
    last = last.then(async () => {
      const answer: Answer = { answer: await answerTo(question), reads: [...reads] };
      reads.clear();
      parentPort?.postMessage(answer);
    });
  });
}
