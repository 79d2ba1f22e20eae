import { Inflate } from "fflate";
import { error, type Fault } from "../../fault.js";
import { crc32 } from "./crc.js";
import type { ZipEntry } from "./zip.js";

/** Most that one part of an archive may unpack to: some four million triangles. */
export const mostUnpackedBytes = 256 * 2 ** 20;
/** Most that a part over 16 MiB may grow by: model text grows five to twenty times, a bomb a thousand. */
const mostGrowth = 200;

// What one step lets out is at most a thousand times this.
const stepBytes = 4096;

/**
 * Unpacks an entry piece by piece; stops at the first byte over what the directory announces, so that neither a
 * false size nor a bomb fills the memory. The check sum is compared at the end. `use` may end it with a fault.
 */
export async function unpack(
  entry: ZipEntry,
  use: (piece: Uint8Array) => Fault | undefined,
): Promise<Fault | undefined> {
  const name = JSON.stringify(entry.name);
  const fault = (code: string, message: string): Fault =>
    error(code, [], `byte ${entry.byte}: ${name} ${message}`, "export or copy the model again");
  if (entry.size > mostUnpackedBytes)
    return fault("mesh-too-large", `unpacks to ${entry.size} bytes; at most ${mostUnpackedBytes} are read`);
  if (entry.size > 2 ** 24 && entry.size > mostGrowth * entry.packed.length)
    return fault(
      "mesh-too-large",
      `unpacks from ${entry.packed.length} to ${entry.size} bytes; over ${mostGrowth} times is taken for a zip bomb`,
    );
  if (entry.method !== 0 && entry.method !== 8)
    return fault("mesh-archive", `is packed by method ${entry.method}; only stored and deflated are read`);

  let size = 0;
  let crc = 0;
  const take = (piece: Uint8Array): Fault | undefined => {
    size += piece.length;
    if (size > entry.size)
      return fault(
        "mesh-too-large",
        `unpacks to more than the ${entry.size} bytes that the archive announces`,
      );
    crc = crc32(piece, crc);
    return use(piece);
  };
  let pieces: Uint8Array[] = [];
  const inflate = new Inflate((piece) => pieces.push(piece));
  for (let at = 0; at < entry.packed.length || at === 0; at += stepBytes) {
    const step = entry.packed.subarray(at, at + stepBytes);
    const last = at + stepBytes >= entry.packed.length;
    pieces = entry.method === 0 ? [step] : [];
    if (entry.method === 8)
      try {
        inflate.push(step, last);
      } catch (cause) {
        const why = cause instanceof Error ? cause.message : String(cause);
        return fault("mesh-archive", `cannot be unpacked near byte ${entry.byte + at}: ${why}`);
      }
    for (const piece of pieces) {
      const found = take(piece);
      if (found !== undefined) return found;
    }
  }
  if (size !== entry.size)
    return fault("mesh-truncated", `unpacks to ${size} bytes; the archive announces ${entry.size}`);
  if (crc !== entry.crc) return fault("mesh-archive", "does not match its check sum; the file is damaged");
  return undefined;
}
