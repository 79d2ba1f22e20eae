import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Io } from "../../src/cli/io.js";

/** An Io that reads real files below a folder and files written before in the same run. */
export const folderIo = (folder: string, written: ReadonlyMap<string, string> = new Map()): Partial<Io> => ({
  readFile: async (path) => {
    const text = written.get(path);
    return text === undefined ? readFileSync(join(folder, path)) : new TextEncoder().encode(text);
  },
});
