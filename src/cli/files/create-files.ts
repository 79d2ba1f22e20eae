import { mkdir, rm, rmdir, stat, writeFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { error, type Fault } from "../../core/fault.js";
import { writeFault } from "./write-fault.js";

/** Removes folders that were made and are empty, from the innermost out. */
async function removeFolders(made: readonly string[]): Promise<void> {
  for (const path of [...made].reverse()) await rmdir(path).catch(() => undefined);
}

/**
 * Makes a folder and those above it that are missing, from the outermost in, and returns which. One by one, as
 * Node's own recursive mkdir never ends where a file system refuses a folder with ENOENT, as /proc does.
 */
async function makeFolders(folder: string): Promise<string[]> {
  const missing: string[] = [];
  for (let path = resolve(folder); ; path = dirname(path)) {
    const there = await stat(path).catch((thrown: NodeJS.ErrnoException) => {
      if (thrown.code !== "ENOENT") throw thrown;
      return undefined;
    });
    if (there?.isDirectory()) break;
    if (there !== undefined) throw Object.assign(new Error("not a folder"), { code: "ENOTDIR" });
    missing.unshift(path);
    if (path === dirname(path)) break;
  }
  const made: string[] = [];
  try {
    for (const path of missing) {
      await mkdir(path);
      made.push(path);
    }
  } catch (thrown) {
    await removeFolders(made);
    throw thrown;
  }
  return made;
}

/** Makes new files in a folder: all of them, or none and why. Existing files are not touched. */
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
  let folders: readonly string[] = [];
  try {
    folders = await makeFolders(folder);
    for (const [name, text] of files) {
      const path = join(folder, name);
      await writeFile(path, text, { flag: "wx" });
      made.push(path);
    }
    return [];
  } catch (thrown) {
    for (const path of made) await rm(path, { force: true });
    await removeFolders(folders);
    return [writeFault(folder, thrown)];
  }
}
