import { closeSync, fdatasyncSync, fstatSync, fsyncSync, openSync, readSync, writeSync } from "node:fs";
import { dirname } from "node:path";
import type { Appended, Appending } from "../io.js";

const lineFeed = 0x0a;
const carriageReturn = 0x0d;
const isLineEnd = (byte: number | undefined): boolean => byte === lineFeed || byte === carriageReturn;

/** The bytes of an open file from a place on. */
function readFrom(file: number, from: number): Buffer {
  const bytes = Buffer.alloc(Math.max(0, fstatSync(file).size - from));
  let filled = 0;
  while (filled < bytes.length) {
    const read = readSync(file, bytes, filled, bytes.length - filled, from + filled);
    if (read === 0) break;
    filled += read;
  }
  return bytes.subarray(0, filled);
}

/** Where the tail of an open file begins; undefined where it is not the one that is expected. */
function placeOfTail(file: number, { tail, isNew }: Appending): number | undefined {
  const { size } = fstatSync(file);
  if (isNew !== (size === 0)) return undefined;
  const start = size - tail.length;
  if (start < 0) return undefined;
  const last = readFrom(file, Math.max(0, start - 1));
  const [before, found] = start === 0 ? [undefined, last] : [last[0], last.subarray(1)];
  return found.equals(tail) && (start === 0 || isLineEnd(before)) ? start : undefined;
}

/** Writes all of it at once; a disk that takes less is full. What it took has no line end, and the next run sets it aside. */
function writeWhole(file: number, bytes: Uint8Array): void {
  if (writeSync(file, bytes) < bytes.length)
    throw Object.assign(new Error("short write"), { code: "ENOSPC" });
  fdatasyncSync(file);
}

/** A new file's name is on the disk only when its folder is; some systems cannot sync a folder. */
function syncFolder(path: string): void {
  try {
    const folder = openSync(dirname(path), "r");
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  } catch {
    // The file itself is synced.
  }
}

/** Copies pieces of a file to the one beside it, then overwrites them with blanks; returns their texts. */
function setAside(
  path: string,
  pieces: readonly (readonly [at: number, bytes: Buffer])[],
): readonly string[] {
  const side = openSync(`${path}.torn`, "a");
  try {
    for (const [, bytes] of pieces) writeWhole(side, Buffer.concat([bytes, Buffer.from("\n")]));
  } finally {
    closeSync(side);
  }
  const over = openSync(path, "r+");
  try {
    for (const [at, bytes] of pieces) writeSync(over, Buffer.alloc(bytes.length, " "), 0, bytes.length, at);
    fdatasyncSync(over);
  } finally {
    closeSync(over);
  }
  return pieces.map(([, bytes]) => bytes.toString());
}

/** Sets a torn tail aside; "changed" where it was not torn: somebody was still writing it, or has set it aside. */
function settleTail(
  path: string,
  file: number,
  start: number,
  { tail }: Appending,
): readonly string[] | "changed" {
  // An empty write waits, as any other does, until a write that is under way has ended.
  writeSync(file, new Uint8Array());
  const now = readFrom(file, start);
  return now.equals(tail) ? setAside(path, [[start, now]]) : "changed";
}

/** What a crash left in front of our text, in its line, since the end of the file was looked at. */
function inFront(region: Buffer, ours: Buffer, isWhole: Appending["isWhole"]): [number, Buffer][] {
  const pieces: [number, Buffer][] = [];
  for (let at = region.indexOf(ours); at >= 0; at = region.indexOf(ours, at + 1)) {
    let start = at;
    while (start > 0 && !isLineEnd(region[start - 1])) start--;
    const [line] = region
      .subarray(start)
      .toString()
      .split(/[\r\n]/, 1);
    if (start < at && !isWhole(line!)) pieces.push([start, region.subarray(start, at)]);
  }
  return pieces;
}

/**
 * Appends lines to a file that other processes append to at the same time, or begins it. They go out in one write to an
 * append-only descriptor, which the system does not mix with others' writes, and are on the disk before this returns.
 * Nothing is ever cut from the file, since others may be writing behind: what a crash left of a line is copied to a file
 * beside it and overwritten with blanks in place, which any reader of CSV passes over.
 */
export function appendLines(path: string, appending: Appending): Appended | "changed" {
  const file = openSync(path, "a+");
  try {
    const start = placeOfTail(file, appending);
    if (start === undefined) return "changed";
    const settled = appending.torn ? settleTail(path, file, start, appending) : [];
    if (settled === "changed") return settled;
    const { text, tail, lineEnd, isNew, isWhole } = appending;
    const ours = Buffer.from(text);
    writeWhole(file, tail.length > 0 ? Buffer.concat([Buffer.from(lineEnd), ours]) : ours);
    if (isNew) syncFolder(path);
    const pieces = inFront(readFrom(file, start), ours, isWhole);
    const others =
      pieces.length === 0
        ? []
        : setAside(
            path,
            pieces.map(([at, bytes]) => [start + at, bytes]),
          );
    return { setAside: [...settled, ...others] };
  } finally {
    closeSync(file);
  }
}
