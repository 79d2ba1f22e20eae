import { closeSync, fstatSync, openSync, readSync, statSync } from "node:fs";

/**
 * A regular file at one go, or its first bytes where it holds more than `atMost`: for thousands of small files a
 * stream each takes longer than reading them. Undefined for a pipe or a device.
 */
export function readWhole(path: string, atMost = Number.POSITIVE_INFINITY): Uint8Array | undefined {
  const named = statSync(path);
  if (named.isDirectory()) throw Object.assign(new Error(`${path} is a folder`), { code: "EISDIR" });
  // To open a pipe waits for its writer, and whoever waits here hears no signal.
  if (!named.isFile()) return undefined;
  const file = openSync(path, "r");
  try {
    const there = fstatSync(file);
    // Files of /proc and the like say that they are empty.
    if (!there.isFile() || there.size === 0) return undefined;
    const bytes = Buffer.allocUnsafe(Math.min(there.size, atMost));
    let filled = 0;
    while (filled < bytes.length) {
      const read = readSync(file, bytes, filled, bytes.length - filled, filled);
      if (read === 0) break;
      filled += read;
    }
    return bytes.subarray(0, filled);
  } finally {
    closeSync(file);
  }
}
