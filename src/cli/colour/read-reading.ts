import { parseReading } from "../../core/colour/reading.js";
import { done, type Outcome } from "../../core/fault.js";
import type { Reading } from "../../core/model/colour.js";
import { about } from "./given.js";

/** `--reading`, where it is given. */
export function readReading(text: string | undefined): Outcome<Reading | undefined> {
  if (text === undefined) return done(undefined);
  const read = parseReading(text);
  return read.ok ? read : { ok: false, faults: about("--reading", read.faults) };
}
