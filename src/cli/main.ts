#!/usr/bin/env node
import module from "node:module";
import { hearStreamFaults } from "./hear-stream-faults.js";
import { version } from "./version.js";

// Node 22.1 and later keep compiled code from run to run.
(module as { readonly enableCompileCache?: () => unknown }).enableCompileCache?.();

const broken = hearStreamFaults();
const [first, ...others] = process.argv.slice(2);
// Loading the command line takes longer than this answer.
if ((first === "--version" || first === "-V") && others.length === 0) process.stdout.write(`${version}\n`);
else {
  const status = await (await import("./run-process.js")).runProcess();
  if (!broken()) process.exitCode = status;
}
