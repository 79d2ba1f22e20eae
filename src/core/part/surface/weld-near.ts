import { addCorner, scramble, type Welder } from "./weld.js";

const cellHash = (i: number, j: number, k: number, body: number): number =>
  scramble(Math.imul(i, 0x27d4eb2f) ^ scramble(Math.imul(j, 0x165667b1) ^ scramble(k ^ (body << 16))));

/**
 * Writes the numbers of the corners in a chunk; a corner that lies within the tolerance [unit of the file] of
 * an earlier one, in every coordinate, takes its number. Space is divided into cells two tolerances wide, so
 * that at most eight cells are searched.
 */
export function weldNear(
  w: Welder,
  tolerance: number,
  chunk: Float64Array,
  corners: number,
  ids: Int32Array,
): void {
  const width = 2 * tolerance;
  for (let c = 0; c < corners; c++) {
    const at = 3 * c;
    const x = chunk[at]! / width;
    const y = chunk[at + 1]! / width;
    const z = chunk[at + 2]! / width;
    const i = Math.floor(x);
    const j = Math.floor(y);
    const k = Math.floor(z);
    // The neighbour on the nearer side, in each direction.
    const di = x - i < 0.5 ? -1 : 1;
    const dj = y - j < 0.5 ? -1 : 1;
    const dk = z - k < 0.5 ? -1 : 1;
    const mask = w.table.length - 1;
    let found = -1;
    let home = 0;
    for (let n = 0; n < 8 && found < 0; n++) {
      const hash = cellHash(i + (n & 1) * di, j + ((n >> 1) & 1) * dj, k + ((n >> 2) & 1) * dk, w.body);
      if (n === 0) home = hash;
      let slot = hash & mask;
      for (let id = w.table[slot]! - 1; id >= 0; id = w.table[slot]! - 1) {
        if (
          id >= w.from &&
          Math.abs(w.places[3 * id]! - chunk[at]!) <= tolerance &&
          Math.abs(w.places[3 * id + 1]! - chunk[at + 1]!) <= tolerance &&
          Math.abs(w.places[3 * id + 2]! - chunk[at + 2]!) <= tolerance
        ) {
          found = id;
          break;
        }
        slot = (slot + 1) & mask;
      }
    }
    if (found < 0) {
      let slot = home & mask;
      while (w.table[slot] !== 0) slot = (slot + 1) & mask;
      found = addCorner(w, home, slot, chunk, at);
    }
    ids[c] = found;
  }
}
