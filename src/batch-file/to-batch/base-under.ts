import { resolveLab } from "../../core/colour/resolve-colour.js";
import type { Base } from "../../core/model/batch.js";
import type { Reading } from "../../core/model/colour.js";
import type { RawSpec } from "../schema/batch.js";
import { rememberBy } from "./remember-by.js";

type Given = NonNullable<RawSpec["bases"]>[string];

const plain = rememberBy(
  ({ lab }: Given, name: string): Base => (lab === undefined ? { name } : { name, lab }),
);

const known = rememberBy((_base: Given): Map<string, Base> => new Map());

/**
 * A base with its colour under a reading: `lab` is taken to be read under it, hex is carried over to it from the
 * screen's D65/2. The same base under the same reading is the same object.
 */
export function baseUnder(of: Given, name: string, reading: Reading): Base {
  if (of.lab !== undefined || of.hex === undefined) return plain(of, name);
  const key = `${reading.illuminant}/${reading.observer} ${name}`;
  const kept = known(of).get(key);
  if (kept !== undefined) return kept;
  const carried = resolveLab({ kind: "hex", hex: of.hex }, reading);
  if (!carried.ok) throw new Error(`the base ${name} was not checked`);
  const base = { name, lab: carried.value };
  known(of).set(key, base);
  return base;
}
