import { parseColour } from "../../core/colour/screen/parse-colour.js";
import { srgbReading } from "../../core/colour/screen/srgb.js";
import { carryOver } from "../../core/colour/spectrum/convert-reading.js";
import { done, type Fault, type Outcome } from "../../core/fault.js";
import type { Shade } from "../../core/model/batch.js";
import { type Colour, type Reading, sameReading } from "../../core/model/colour.js";

/** A colour as it was typed, or a shade of a batch. */
export interface Given {
  /** As it was typed. */
  readonly said: string;
  readonly colour: Colour;
  /** What its values were read under; absent for typed CIELAB, which is read under whatever the user says. */
  readonly readUnder?: Reading;
  /** Where it is one of a batch. */
  readonly shade?: Shade;
}

/** Faults said of one argument. */
export const about = (argument: string, faults: readonly Fault[]): readonly Fault[] =>
  faults.map((fault) => ({ ...fault, path: [argument, ...fault.path] }));

/** A colour from the command line. */
export function givenColour(said: string, argument: string): Outcome<Given> {
  const read = parseColour(said);
  if (!read.ok) return { ok: false, faults: about(argument, read.faults) };
  const colour = read.value;
  return done({ said, colour, ...(colour.kind === "hex" ? { readUnder: srgbReading } : {}) }, read.faults);
}

/** What a colour is read under unless it says so itself: typed CIELAB only. */
export const readUnder = (given: Given, typed: Reading): Reading => given.readUnder ?? typed;

/**
 * A colour whose CIELAB is what it would read under another reading. A hex stays one, since it says what it was
 * read under.
 */
export function readAs(given: Given, typed: Reading, reading: Reading): Outcome<Colour> {
  const { colour } = given;
  const own = readUnder(given, typed);
  if (colour.kind !== "lab" || sameReading(own, reading)) return done(colour);
  const carried = carryOver(colour.lab, own, reading);
  return carried.ok ? done({ kind: "lab", lab: carried.value }, carried.faults) : carried;
}
