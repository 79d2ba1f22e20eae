import { createReadStream, realpathSync, statSync } from "node:fs";
import { isAbsolute, join } from "node:path";
import { readWhole } from "./files/read-whole.js";
import type { Io } from "./io.js";

async function drain(
  stream: AsyncIterable<Uint8Array>,
  atMost = Number.POSITIVE_INFINITY,
): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    chunks.push(chunk);
    size += chunk.length;
    if (size >= atMost) break;
  }
  return Buffer.concat(chunks).subarray(0, atMost);
}

/** The process's own streams, files and clock. */
export function nodeIo(): Io {
  const at = (path: string): string => (isAbsolute(path) ? path : join(process.cwd(), path));
  return {
    out: (text) => void process.stdout.write(text),
    write: (text) => new Promise((settle) => process.stdout.write(text, (fault) => settle(!fault))),
    err: (text) => void process.stderr.write(text),
    readStdin: (atMost) => drain(process.stdin, atMost),
    read: async function* (path) {
      yield* path === "-" ? process.stdin : createReadStream(at(path));
    },
    readFile: async (path, atMost) =>
      readWhole(at(path), atMost) ?? drain(createReadStream(at(path)), atMost),
    sizeOf: (path) => {
      const there = statSync(at(path), { throwIfNoEntry: false });
      return there?.isFile() ? there.size : undefined;
    },
    find: async (argument) => (await import("./files/find-files.js")).findFiles(argument, process.cwd()),
    replaceFile: async (path) => (await import("./files/replace-file.js")).replaceFile(at(path)),
    appendLines: async (path, appending) =>
      (await import("./files/append-lines.js")).appendLines(at(path), appending),
    createFiles: async (folder, files) =>
      (await import("./files/create-files.js")).createFiles(at(folder), files),
    realPath: (path) => {
      try {
        return realpathSync.native(at(path));
      } catch {
        return undefined;
      }
    },
    env: process.env,
    cwd: process.cwd(),
    now: () => new Date(),
    outIsTerminal: process.stdout.isTTY === true,
    errIsTerminal: process.stderr.isTTY === true,
    columns: process.stdout.isTTY ? process.stdout.columns : undefined,
  };
}
