import type { Io } from "./io.js";
import { nodeIo } from "./node-io.js";
import { run } from "./run.js";

const threads: NonNullable<Io["threads"]> = async (script, job, atMost) =>
  (await import("./thread.js")).startThreads(new URL(`./${script}-thread.js`, import.meta.url), job, atMost);

/** Runs the command line of this process; returns its exit status. */
export const runProcess = (): Promise<number> => run(process.argv.slice(2), { ...nodeIo(), threads });
