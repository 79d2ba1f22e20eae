#!/usr/bin/env node
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

const status = await run(process.argv.slice(2), nodeIo());
if (!broken) process.exitCode = status;
