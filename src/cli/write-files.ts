import { mkdir, rm, rmdir, stat, writeFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import writeFileAtomic from "write-file-atomic";
import { error, type Fault } from "../core/fault.js";
import { writeFault } from "./write-fault.js";

/** Puts a new text in place of an old one in one step; a pipe or device is written to, never replaced. */
export async function writeWhole(path: string, text: string): Promise<void> {
  const there = await stat(path).catch(() => undefined);
  if (there === undefined || there.isFile()) await writeFileAtomic(path, text);
  else await writeFile(path, text);
}

/** Removes folders that were made and are empty, from the innermost out. */
async function removeFolders(inner: string, outer: string): Promise<void> {
  for (let path = resolve(inner); path.startsWith(resolve(outer)); path = dirname(path))
    await rmdir(path).catch(() => undefined);
}

/** Makes new files in a folder: all of them, or none and why. Nothing that stands there is touched. */
export async function createFiles(
  folder: string,
  files: ReadonlyMap<string, string>,
): Promise<readonly Fault[]> {
  const taken: Fault[] = [];
  for (const name of files.keys())
    if ((await stat(join(folder, name)).catch(() => undefined)) !== undefined)
      taken.push(
        error("exists", [], `${join(folder, name)} is already there and stays as it is`, "name a new folder"),
      );
  if (taken.length > 0) return taken;
  const made: string[] = [];
  let firstMade: string | undefined;
  try {
    firstMade = await mkdir(folder, { recursive: true });
    for (const [name, text] of files) {
      const path = join(folder, name);
      await writeFile(path, text, { flag: "wx" });
      made.push(path);
    }
    return [];
  } catch (thrown) {
    for (const path of made) await rm(path, { force: true });
    if (firstMade !== undefined) await removeFolders(folder, firstMade);
    return [writeFault(folder, thrown)];
  }
}
