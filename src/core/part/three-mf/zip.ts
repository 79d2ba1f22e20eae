import { error, type Fault } from "../../fault.js";

/** One file in an archive, as its directory lists it. */
export interface ZipEntry {
  readonly name: string;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly crc: number;
  readonly packed: Uint8Array;
  readonly size: number;
  /** Where its packed bytes begin in the archive. */
  readonly byte: number;
}

const mostEntries = 10_000;
const help = "export or copy the model again";
const fault = (code: string, byte: number, message: string): Fault =>
  error(code, [], `byte ${byte}: ${message}`, help);

/** Whether a name points outside the archive: absolute, with a drive, or climbing out with "..". */
export function leavesArchive(name: string): boolean {
  const steps = name.replaceAll("\\", "/").split("/");
  let depth = 0;
  for (const step of steps) {
    if (step === "..") depth--;
    else if (step !== "" && step !== ".") depth++;
    if (depth < 0) return true;
  }
  return /^([\\/]|[a-z]:)/i.test(name);
}

function endOfDirectory(view: DataView): number {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 65_535); at--)
    if (view.getUint32(at, true) === 0x06054b50) return at;
  return -1;
}

/** The entry at a place of the directory, and the place of the next one. */
function readEntry(
  bytes: Uint8Array,
  view: DataView,
  at: number,
  limit: number,
): { entry: ZipEntry; next: number } | Fault {
  if (at + 46 > limit || view.getUint32(at, true) !== 0x02014b50)
    return fault("mesh-archive", at, "an entry of the archive's directory should begin here");
  const flags = view.getUint16(at + 8, true);
  const packedSize = view.getUint32(at + 20, true);
  const size = view.getUint32(at + 24, true);
  const nameLength = view.getUint16(at + 28, true);
  const local = view.getUint32(at + 42, true);
  const next = at + 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  if (next > limit) return fault("mesh-archive", at, "an entry runs past the end of the archive's directory");
  const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
  const shown = JSON.stringify(name.slice(0, 80));
  if (leavesArchive(name)) return fault("mesh-archive-path", at, `the path ${shown} leaves the archive`);
  if ((flags & 1) !== 0) return fault("mesh-archive", at, `${shown} is encrypted`);
  if (packedSize === 0xffffffff || size === 0xffffffff || local === 0xffffffff)
    return fault("mesh-archive", at, `${shown} uses the zip64 form, for files over 4 GiB, which is not read`);
  if (local + 30 > bytes.length || view.getUint32(local, true) !== 0x04034b50)
    return fault(
      "mesh-archive",
      at,
      `${shown} should begin at byte ${local}, but the file has something else there`,
    );
  const byte = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (byte + packedSize > bytes.length)
    return fault("mesh-truncated", byte, `${shown} takes ${packedSize} bytes, but the file ends before`);
  const method = view.getUint16(at + 10, true);
  const crc = view.getUint32(at + 16, true);
  return {
    entry: { name, method, crc, size, byte, packed: bytes.subarray(byte, byte + packedSize) },
    next,
  };
}

/**
 * The directory of a zip archive: entries by name in lower case, since the parts of a package differ by more
 * than case. Only the directory is trusted; two entries of one name are refused.
 */
export function zipDirectory(bytes: Uint8Array): ReadonlyMap<string, ZipEntry> | Fault {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOfDirectory(view);
  if (end < 0)
    return fault(
      "mesh-truncated",
      bytes.length,
      "the archive ends without its directory; the file is cut off",
    );
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > mostEntries)
    return fault(
      "mesh-too-large",
      end,
      `the archive lists ${count} entries; at most ${mostEntries} are read`,
    );
  const limit = Math.min(end, at + view.getUint32(end + 12, true));
  const entries = new Map<string, ZipEntry>();
  for (let n = 0; n < count; n++) {
    const found = readEntry(bytes, view, at, limit);
    if ("code" in found) return found;
    const key = found.entry.name.toLowerCase();
    if (entries.has(key)) return fault("mesh-archive", at, `${JSON.stringify(key)} is in the archive twice`);
    entries.set(key, found.entry);
    at = found.next;
  }
  return entries;
}
