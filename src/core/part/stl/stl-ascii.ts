import { error, type Fault } from "../../fault.js";
import { chunkTriangles, type TriangleReader, type TriangleSource } from "../triangles.js";
import { parseDecimal } from "./decimal.js";

/** Where the reader is in a text; `from` and `to` bound the word that was read last. */
interface Words {
  readonly bytes: Uint8Array;
  at: number;
  line: number;
  from: number;
  to: number;
}

/** Moves on to the next word; false at the end of the text. */
function nextWord(w: Words): boolean {
  const { bytes } = w;
  const length = bytes.length;
  let at = w.at;
  for (; at < length && bytes[at]! <= 32; at++)
    if (bytes[at] === 10 || (bytes[at] === 13 && bytes[at + 1] !== 10)) w.line++;
  w.from = at;
  while (at < length && bytes[at]! > 32) at++;
  w.to = w.at = at;
  return at > w.from;
}

function skipLine(w: Words): void {
  while (w.at < w.bytes.length && w.bytes[w.at] !== 10 && w.bytes[w.at] !== 13) w.at++;
}

const letters = (word: string): Uint8Array => Uint8Array.from(word, (c) => c.charCodeAt(0));
const words = {
  solid: letters("solid"),
  endsolid: letters("endsolid"),
  facet: letters("facet"),
  normal: letters("normal"),
  outer: letters("outer"),
  loop: letters("loop"),
  vertex: letters("vertex"),
  endloop: letters("endloop"),
  endfacet: letters("endfacet"),
};

function isWord(w: Words, word: Uint8Array): boolean {
  if (w.to - w.from !== word.length) return false;
  for (let i = 0; i < word.length; i++) if ((w.bytes[w.from + i]! | 32) !== word[i]) return false;
  return true;
}

/** The last word, short and printable. */
const shown = (w: Words): string =>
  `"${String.fromCharCode(...w.bytes.subarray(w.from, Math.min(w.to, w.from + 24))).replace(/[^ -~]/g, "?")}"`;

const help = "export the model again, best as a binary STL";

function unexpected(w: Words, wanted: string): Fault {
  if (w.to === w.from)
    return error("mesh-truncated", [], `line ${w.line}: the text ends before ${wanted}`, help);
  return error("mesh-syntax", [], `line ${w.line}: found ${shown(w)}, expected ${wanted}`, help);
}

const opening = [words.outer, words.loop];
const closing = [words.endloop, words.endfacet];

/** Reads the rest of a facet after the word "facet" into nine numbers. */
function readFacet(w: Words, chunk: Float64Array, at: number): Fault | undefined {
  if (!nextWord(w) || !isWord(w, words.normal)) return unexpected(w, "normal");
  // The normal is not used, and of a triangle without area it often is "nan".
  for (let i = 0; i < 3; i++) if (!nextWord(w)) return unexpected(w, "a number of the normal");
  for (const word of opening)
    if (!nextWord(w) || !isWord(w, word)) return unexpected(w, String.fromCharCode(...word));
  for (let corner = 0; corner < 3; corner++) {
    if (!nextWord(w) || !isWord(w, words.vertex)) return unexpected(w, "vertex");
    for (let axis = 0; axis < 3; axis++) {
      if (!nextWord(w)) return unexpected(w, "a coordinate");
      const value = parseDecimal(w.bytes, w.from, w.to);
      if (value - value !== 0)
        return error("mesh-not-finite", [], `line ${w.line}: ${shown(w)} is not a finite number`, help);
      chunk[at + 3 * corner + axis] = value;
    }
  }
  for (const word of closing)
    if (!nextWord(w) || !isWord(w, word)) return unexpected(w, String.fromCharCode(...word));
  return undefined;
}

/** An STL in text form: solid, facets, endsolid, and again. Words in any case, any white space, any line ends. */
export const asciiTriangles = (bytes: Uint8Array): TriangleSource => ({
  // A facet takes some 250 bytes as most programs write it.
  expected: Math.ceil(bytes.length / 250),
  open: () => openAscii(bytes),
});

function openAscii(bytes: Uint8Array): TriangleReader {
  const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  const w: Words = { bytes, at: mark, line: 1, from: 0, to: 0 };
  let inside = false;
  const read = (chunk: Float64Array): number | Fault => {
    let count = 0;
    while (count < chunkTriangles) {
      if (!nextWord(w)) {
        if (inside) return unexpected(w, "facet or endsolid");
        break;
      }
      if (inside && isWord(w, words.facet)) {
        const fault = readFacet(w, chunk, 9 * count);
        if (fault !== undefined) return fault;
        count++;
      } else if (isWord(w, inside ? words.endsolid : words.solid)) {
        skipLine(w);
        inside = !inside;
      } else return unexpected(w, inside ? "facet or endsolid" : "solid");
    }
    return count;
  };
  return { read, body: () => 0 };
}
