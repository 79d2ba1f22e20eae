import type { Base } from "../model/batch.js";
import type { Reading } from "../model/colour.js";
import { resolveLab } from "./resolve-colour.js";

/**
 * A base under a reading: its `lab` counts as read so, its `hex` is converted from the screen's D65/2.
 * @example
 * baseUnder({ name: "white", lab: [92, 0, -2] }, { illuminant: "A", observer: 2 }).lab // => [92, 0, -2]
 */
export function baseUnder(base: Base, reading: Reading): Base {
  if (base.hex === undefined) return base;
  const carried = resolveLab({ kind: "hex", hex: base.hex }, reading);
  return carried.ok ? { ...base, lab: carried.value } : base;
}
