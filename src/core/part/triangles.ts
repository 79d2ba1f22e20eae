import type { Fault } from "../fault.js";

/** Triangles that a reader hands over at a time: few enough to stay in the processor's cache. */
export const chunkTriangles = 512;

/** Room for one chunk: nine numbers a triangle, x y z of its three corners in the unit of the file. */
export const newChunk = (): Float64Array => new Float64Array(9 * chunkTriangles);

/** Reads the triangles of a file from first to last without keeping them. */
export interface TriangleReader {
  /** Fills the chunk and returns how many triangles it now holds: 0 at the end, or what is wrong with the file. */
  readonly read: (chunk: Float64Array) => number | Fault;
  /** Which body of the file the last chunk belongs to, counted from 0. Corners of two bodies are never one. */
  readonly body: () => number;
}

/** A model file that can be read again from its start, always with the same triangles in the same order. */
export interface TriangleSource {
  readonly open: () => TriangleReader;
  /** How many triangles to expect, to size tables; need not be exact. */
  readonly expected: number;
}

/** Hands every chunk of a source to a function; returns what is wrong with the file, if anything. */
export function eachChunk(
  source: TriangleSource,
  use: (chunk: Float64Array, count: number, body: number) => void,
): Fault | undefined {
  const reader = source.open();
  const chunk = newChunk();
  for (;;) {
    const count = reader.read(chunk);
    if (typeof count !== "number") return count;
    if (count === 0) return undefined;
    use(chunk, count, reader.body());
  }
}
