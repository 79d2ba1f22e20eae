import { realpath } from "node:fs/promises";
import { isAbsolute, join, posix, sep } from "node:path";
import { glob, isDynamicPattern } from "tinyglobby";

/** Names of files that can hold a batch, in capitals too. */
const batchFiles = "**/*.{yaml,yml,json}";

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Names without those that lead through a link to a file that is among them by another name. */
async function eachOnce(all: readonly string[], linkless: ReadonlySet<string>, folder: string) {
  if (all.length === linkless.size) return all;
  const real = (name: string): Promise<string> =>
    realpath(isAbsolute(name) ? name : join(folder, name)).catch(() => name);
  const known = new Set<string>();
  for (const name of linkless) known.add(await real(name));
  const found: string[] = [];
  for (const name of [...all].sort(byCodeUnit)) {
    if (linkless.has(name)) found.push(name);
    else {
      const target = await real(name);
      if (!known.has(target)) found.push(name);
      known.add(target);
    }
  }
  return found;
}

/** Files that `findFiles` looks for: below a folder, or those that a pattern matches; undefined for a plain name. */
export async function matchFiles(
  argument: string,
  inFolder: boolean,
  cwd: string,
): Promise<readonly string[] | undefined> {
  if (!inFolder && !isDynamicPattern(argument)) return undefined;
  const folder = !inFolder ? cwd : isAbsolute(argument) ? argument : join(cwd, argument);
  const pattern = inFolder ? batchFiles : argument.replaceAll(sep, posix.sep);
  const matching = (followSymbolicLinks: boolean): Promise<string[]> =>
    glob(pattern, {
      cwd: folder,
      absolute: !inFolder && isAbsolute(argument),
      expandDirectories: false,
      followSymbolicLinks,
      caseSensitiveMatch: !inFolder,
    });
  const all = await matching(true);
  const found = await eachOnce(all, new Set(await matching(false)), folder);
  return found.map((name) => (inFolder ? join(argument, name) : name)).sort(byCodeUnit);
}
