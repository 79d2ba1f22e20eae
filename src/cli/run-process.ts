import type { Io } from "./io.js";
import { nodeIo } from "./node-io.js";
import { run } from "./run.js";

const threads: NonNullable<Io["threads"]> = async (script, job, atMost) =>
  (await import("./thread.js")).startThreads(new URL(`./${script}-thread.js`, import.meta.url), job, atMost);

/** Runs the command line of this process and sets its exit status. */
export async function runProcess(): Promise<void> {
  let broken = false;
  process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
    if (fault.code === "EPIPE" || broken) return;
    broken = true;
    process.exitCode = 2;
    process.stderr.write(`error: the result could not be written: ${fault.message}\n`);
  });
  process.stderr.on("error", () => {});
  const status = await run(process.argv.slice(2), { ...nodeIo(), threads });
  if (!broken) process.exitCode = status;
}
