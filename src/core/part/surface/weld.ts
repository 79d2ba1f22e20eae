/** Corners that coincide get one number. Grows as corners come in; no object per corner. */
export interface Welder {
  /** x y z of every distinct corner. */
  places: Float64Array;
  /** Hash of every distinct corner, so that the table can grow. */
  hashes: Int32Array;
  /** Open addressing: number of a corner + 1, or 0. */
  table: Int32Array;
  count: number;
  /** The body that corners now belong to, and its first corner. */
  body: number;
  from: number;
}

const powerAbove = (n: number): number => 2 ** Math.ceil(Math.log2(Math.max(n, 16)));

/** An empty welder with room for about so many distinct corners. */
export function newWelder(expected: number): Welder {
  const room = Math.max(16, Math.ceil(expected));
  return {
    places: new Float64Array(3 * room),
    hashes: new Int32Array(room),
    table: new Int32Array(powerAbove(1.6 * room)),
    count: 0,
    body: 0,
    from: 0,
  };
}

/** Scrambles 32 bits (a multiply-xorshift finaliser). */
export function scramble(bits: number): number {
  const a = Math.imul(bits ^ (bits >>> 16), 0x7feb352d);
  const b = Math.imul(a ^ (a >>> 15), 0x846ca68b | 0);
  return b ^ (b >>> 16);
}

function growTable(w: Welder): void {
  const table = new Int32Array(2 * w.table.length);
  const mask = table.length - 1;
  for (let id = 0; id < w.count; id++) {
    let slot = w.hashes[id]! & mask;
    while (table[slot] !== 0) slot = (slot + 1) & mask;
    table[slot] = id + 1;
  }
  w.table = table;
}

function growRoom(w: Welder): void {
  const room = Math.ceil(1.5 * w.hashes.length);
  const places = new Float64Array(3 * room);
  places.set(w.places);
  const hashes = new Int32Array(room);
  hashes.set(w.hashes);
  w.places = places;
  w.hashes = hashes;
}

/** Appends a distinct corner and returns its number; the slot must be free. */
export function addCorner(w: Welder, hash: number, slot: number, chunk: Float64Array, at: number): number {
  const id = w.count;
  if (id === w.hashes.length) growRoom(w);
  w.places[3 * id] = chunk[at]!;
  w.places[3 * id + 1] = chunk[at + 1]!;
  w.places[3 * id + 2] = chunk[at + 2]!;
  w.hashes[id] = hash;
  w.table[slot] = id + 1;
  w.count = id + 1;
  if (2 * w.count > w.table.length) growTable(w);
  return id;
}

/** Says to which body the next corners belong: bodies come in order from 0. */
export function enterBody(w: Welder, body: number): void {
  if (body === w.body) return;
  w.body = body;
  w.from = w.count;
}

/**
 * Writes the numbers of the corners in a chunk; corners are one if all three coordinates are equal.
 * -0 counts as 0. A corner is always before those of later bodies in its row of slots, so that only
 * earlier bodies need to be passed over.
 */
export function weldExactly(w: Welder, chunk: Float64Array, corners: number, ids: Int32Array): void {
  const bits = new Int32Array(chunk.buffer, chunk.byteOffset, 2 * chunk.length);
  for (let i = 0; i < 3 * corners; i++) chunk[i]! += 0;
  const seed = Math.imul(w.body, 0x9e3779b1 | 0);
  for (let c = 0; c < corners; c++) {
    const at = 3 * c;
    let hash = seed;
    for (let i = 2 * at; i < 2 * at + 6; i++) hash = Math.imul(hash ^ bits[i]!, 0x01000193) ^ (hash >>> 15);
    hash = scramble(hash);
    const mask = w.table.length - 1;
    let slot = hash & mask;
    let id = w.table[slot]! - 1;
    while (
      id >= 0 &&
      !(
        w.places[3 * id] === chunk[at] &&
        w.places[3 * id + 1] === chunk[at + 1] &&
        w.places[3 * id + 2] === chunk[at + 2] &&
        id >= w.from
      )
    ) {
      slot = (slot + 1) & mask;
      id = w.table[slot]! - 1;
    }
    ids[c] = id >= 0 ? id : addCorner(w, hash, slot, chunk, at);
  }
}
