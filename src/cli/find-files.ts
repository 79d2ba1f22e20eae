import { stat } from "node:fs/promises";
import { isAbsolute, join, posix, sep } from "node:path";

/** Names of files that can hold a batch. */
const batchFiles = "**/*.{yaml,yml,json}";

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Files that could hold a batch, below a folder or matching a pattern of names, sorted by code unit, so that the
 * order is the same on every machine; undefined where the argument names no folder and is no pattern. Hidden
 * files are left out, and links to folders are not followed in a folder.
 */
export async function findFiles(argument: string, cwd: string): Promise<readonly string[] | undefined> {
  const there = await stat(isAbsolute(argument) ? argument : join(cwd, argument)).catch(() => undefined);
  if (there !== undefined && !there.isDirectory()) return undefined;
  const { glob, isDynamicPattern } = await import("tinyglobby");
  if (there === undefined && !isDynamicPattern(argument)) return undefined;
  const found =
    there === undefined
      ? await glob(argument.replaceAll(sep, posix.sep), {
          cwd,
          absolute: isAbsolute(argument),
          expandDirectories: false,
        })
      : (
          await glob(batchFiles, {
            cwd: isAbsolute(argument) ? argument : join(cwd, argument),
            expandDirectories: false,
            followSymbolicLinks: false,
          })
        ).map((name) => join(argument, name));
  return found.sort(byCodeUnit);
}
