import { stat } from "node:fs/promises";
import { isAbsolute, join } from "node:path";

/**
 * Files that could hold a batch, below a folder or matching a pattern of names, sorted by code unit, so that the
 * order is the same on every machine; undefined where the argument is neither a folder nor a pattern. Hidden
 * files are left out; links are followed, and a file that is found by several names is there once.
 */
export async function findFiles(argument: string, cwd: string): Promise<readonly string[] | undefined> {
  const there = await stat(isAbsolute(argument) ? argument : join(cwd, argument)).catch(() => undefined);
  if (there !== undefined && !there.isDirectory()) return undefined;
  return (await import("./match-files.js")).matchFiles(argument, there !== undefined, cwd);
}
