import { isAbsolute, join } from "node:path";
import type { Io } from "./io.js";

/** The process's own streams, files and clock. */
export function nodeIo(): Io {
  const at = (path: string): string => (isAbsolute(path) ? path : join(process.cwd(), path));
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    readStdin: async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks);
    },
    readFile: async (path) => (await import("node:fs/promises")).readFile(at(path)),
    writeFileAtomic: async (path, text) => (await import("./write-files.js")).writeWhole(at(path), text),
    createFiles: async (folder, files) => (await import("./write-files.js")).createFiles(at(folder), files),
    env: process.env,
    cwd: process.cwd(),
    now: () => new Date(),
    outIsTerminal: process.stdout.isTTY === true,
    errIsTerminal: process.stderr.isTTY === true,
    columns: process.stdout.isTTY ? process.stdout.columns : undefined,
  };
}
