#!/usr/bin/env node
import module from "node:module";

// Node 22.1 and later keep compiled code from run to run.
(module as { readonly enableCompileCache?: () => unknown }).enableCompileCache?.();
await (await import("./run-process.js")).runProcess();
