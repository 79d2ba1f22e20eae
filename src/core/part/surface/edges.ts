import { scramble } from "./weld.js";

/**
 * Edges whose two directions do not balance yet, by open addressing in typed arrays. An edge leaves when its
 * opposite comes, so in a file whose neighbours are near each other the table stays small.
 */
export interface OpenEdges {
  /** The smaller number of the two corners + 1, or 0 where the slot is free. */
  low: Int32Array;
  high: Int32Array;
  /** Times run from the smaller to the larger number, less times run back. */
  balance: Int32Array;
  used: number;
}

const empty = (slots: number): OpenEdges => ({
  low: new Int32Array(slots),
  high: new Int32Array(slots),
  balance: new Int32Array(slots),
  used: 0,
});

/** No open edge. */
export const noEdges = (): OpenEdges => empty(1024);

const edgeHash = (a: number, b: number): number => scramble(a ^ Math.imul(b, 0x9e3779b1 | 0));

/** Frees a slot and moves up what was behind it, so that no search breaks off early. */
function remove(edges: OpenEdges, freed: number): void {
  const { low, high, balance } = edges;
  const mask = low.length - 1;
  let hole = freed;
  for (let slot = (hole + 1) & mask; low[slot] !== 0; slot = (slot + 1) & mask) {
    const home = edgeHash(low[slot]!, high[slot]!) & mask;
    if (((slot - home) & mask) < ((slot - hole) & mask)) continue;
    low[hole] = low[slot]!;
    high[hole] = high[slot]!;
    balance[hole] = balance[slot]!;
    hole = slot;
  }
  low[hole] = 0;
  edges.used--;
}

function grow(edges: OpenEdges): void {
  const { low, high, balance } = edges;
  Object.assign(edges, empty(2 * low.length));
  low.forEach((a, slot) => {
    if (a !== 0) add(edges, a, high[slot]!, balance[slot]!);
  });
}

function add(edges: OpenEdges, a: number, b: number, times: number): void {
  const { low, high, balance } = edges;
  const mask = low.length - 1;
  let slot = edgeHash(a, b) & mask;
  while (low[slot] !== 0) {
    if (low[slot] === a && high[slot] === b) {
      const left = balance[slot]! + times;
      if (left === 0) remove(edges, slot);
      else balance[slot] = left;
      return;
    }
    slot = (slot + 1) & mask;
  }
  low[slot] = a;
  high[slot] = b;
  balance[slot] = times;
  edges.used++;
  if (2 * edges.used > low.length) grow(edges);
}

/** Takes the edge that runs from corner a to corner b. */
export function takeEdge(edges: OpenEdges, a: number, b: number): void {
  if (a < b) add(edges, a + 1, b + 1, 1);
  else if (b < a) add(edges, b + 1, a + 1, -1);
}

/** What is left once every triangle was taken; nothing, if the surface is closed. */
export interface EdgesLeft {
  /** Edges whose directions do not balance. */
  readonly open: number;
  /** Those that run the same way twice or more: the mark of triangles turned inside out. */
  readonly sameWay: number;
  /** A corner at some open edge, or -1. */
  readonly corner: number;
}

/** Counts the open edges. */
export function edgesLeft(edges: OpenEdges): EdgesLeft {
  let sameWay = 0;
  let corner = -1;
  edges.low.forEach((a, slot) => {
    if (a === 0) return;
    if (Math.abs(edges.balance[slot]!) > 1) sameWay++;
    if (corner < 0 || a - 1 < corner) corner = a - 1;
  });
  return { open: edges.used, sameWay, corner };
}
