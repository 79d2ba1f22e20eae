import { append } from "../../core/append.js";
import { resolveLab } from "../../core/colour/resolve-colour.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { type Colour, type Lab, type Reading, sameReading } from "../../core/model/colour.js";
import { type Unevenness, unevenness } from "../../core/quality/unevenness.js";
import type { Origin } from "../../report/colour/origin.js";
import { about, type Given, readAs, readUnder } from "../colour/given.js";

/** The colour to compare with, and what is compared with it: several readings are of one part. */
export interface Sides {
  readonly standard: Given;
  readonly samples: readonly Given[];
  /** One of the colours is a shade of the batch. */
  readonly ofShade: boolean;
}

/** The one shade among the colours is the standard, wherever it was typed; else the first colour is. */
export function sidesOf(colours: readonly Given[]): Outcome<Sides> {
  const shades = colours.filter(({ shade }) => shade !== undefined);
  if (colours.length > 2 && shades.length > 1)
    return failed(
      error(
        "usage",
        [],
        "several readings of a part are compared with one shade, not with several",
        "compare with one shade at a time",
      ),
    );
  const ofShade = shades.length === 1;
  const standard = ofShade ? shades[0]! : colours[0]!;
  return done({ standard, samples: colours.filter((colour) => colour !== standard), ofShade });
}

/** CIELAB of several readings under one; typed values were read under `typed`. */
export function labsUnder(givens: readonly Given[], typed: Reading, reading: Reading): Outcome<Lab[]> {
  const labs: Lab[] = [];
  const faults: Fault[] = [];
  for (const given of givens) {
    const read = readAs(given, typed, reading);
    const lab = read.ok ? resolveLab(read.value, reading) : read;
    append(faults, read.faults);
    if (lab.ok) labs.push(lab.value);
    else if (read.ok) append(faults, lab.faults);
  }
  return labs.length === givens.length ? done(labs, faults) : failed(...faults);
}

/** One side of a comparison under the reading of the report. */
export interface Side {
  readonly colour: Colour;
  readonly origin: Origin;
  /** Of several readings. */
  readonly uneven?: Unevenness;
}

/** A side from its readings: a single one as it is, several by their mean. */
export function sideOf(
  side: "standard" | "sample",
  givens: readonly Given[],
  typed: Reading,
  reading: Reading,
): Outcome<Side> {
  const [first, ...others] = givens as readonly [Given, ...Given[]];
  const own = readUnder(first, typed);
  const carried =
    first.colour.kind === "reflectance" || sameReading(own, reading) ? {} : { carriedFrom: own };
  if (others.length === 0) {
    const read = readAs(first, typed, reading);
    const faults = about(side, read.faults);
    return read.ok
      ? done({ colour: read.value, origin: { given: first.said, ...carried } }, faults)
      : failed(...faults);
  }
  const labs = labsUnder(givens, typed, reading);
  const faults = about(side, labs.faults);
  if (!labs.ok) return failed(...faults);
  const uneven = unevenness(labs.value);
  const origin = { given: `mean of ${givens.length} readings`, ...carried };
  return done({ colour: { kind: "lab", lab: uneven.lab }, origin, uneven }, faults);
}
