import { error, type Fault } from "../fault.js";
import { announcedTriangles, binaryLength } from "./stl/stl-binary.js";

/** The three forms of model file that can be read. */
export type MeshFormat = "stl-binary" | "stl-ascii" | "3mf";

const sample = 4096;

/** The first readable characters, in lower case, without a byte order mark or leading white space. */
function opening(bytes: Uint8Array): string {
  let from = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  while (from < bytes.length && bytes[from]! <= 32 && bytes[from] !== 0) from++;
  return String.fromCharCode(...bytes.subarray(from, from + 16)).toLowerCase();
}

/** The place of the first byte that cannot be in a text, or -1. */
const firstBinaryByte = (bytes: Uint8Array): number =>
  bytes.subarray(0, sample).findIndex((byte) => byte < 32 && !(byte >= 9 && byte <= 13));

const holds = (bytes: Uint8Array, from: number, word: string): boolean =>
  String.fromCharCode(...bytes.subarray(from, from + sample))
    .toLowerCase()
    .includes(word);

const help = "give an STL, binary or text, or a 3MF file";

/**
 * Tells the form of a model file from its bytes alone; names and the word "solid" in a binary header are not
 * trusted. A length that fits the number of triangles at byte 80 makes it binary; then a text that begins with
 * "solid" makes it a text; anything else that is not a text is taken as binary, and its length is checked later.
 */
export function meshFormat(bytes: Uint8Array): MeshFormat | Fault {
  if (bytes.length === 0) return error("mesh-empty", [], "byte 0: the file is empty", help);
  const start = opening(bytes);
  if (start.startsWith("pk")) return "3mf";
  if (bytes.length >= 84 && binaryLength(announcedTriangles(bytes)) === bytes.length) return "stl-binary";
  const binary = firstBinaryByte(bytes);
  if (/^solid(?![a-z0-9])/.test(start) && binary < 0) return "stl-ascii";
  if (holds(bytes, 80, "vertex") && holds(bytes, 0, "facet")) {
    if (binary < 0)
      return error(
        "mesh-mislabelled",
        [],
        'line 1: a text with facets that does not begin with "solid"',
        help,
      );
    return error(
      "mesh-mislabelled",
      [],
      `byte ${binary}: neither a text nor a binary STL: it has binary bytes among the words of a text STL`,
      "export the model again",
    );
  }
  if (binary < 0 || start.startsWith("<?xml") || start.startsWith("gltf"))
    return error("mesh-unknown", [], "byte 0: neither an STL nor a 3MF file", help);
  return "stl-binary";
}
