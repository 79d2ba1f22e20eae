#!/usr/bin/env node
import type { Io } from "./io.js";
import { nodeIo } from "./node-io.js";
import { run } from "./run.js";

let broken = false;
process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
  if (fault.code === "EPIPE" || broken) return;
  broken = true;
  process.exitCode = 2;
  process.stderr.write(`error: the result could not be written: ${fault.message}\n`);
});
process.stderr.on("error", () => {});

const threads: Io["threads"] = async (script, job, atMost) =>
  (await import("./thread.js")).startThreads(new URL(`./${script}-thread.js`, import.meta.url), job, atMost);

const status = await run(process.argv.slice(2), { ...nodeIo(), threads });
if (!broken) process.exitCode = status;
