import { done, error, failed, type Outcome } from "../fault.js";
import type { IlluminantName, ObserverName, Reading } from "../model/colour.js";
import { anyCase } from "../quantity/pattern/any-case.js";

/** Every illuminant that colours can be read under. */
export const illuminantNames: readonly IlluminantName[] = ["A", "D50", "D65", "F2", "F11", "LED-B3"];

/**
 * An illuminant by its name, in whatever case.
 * @example findIlluminant("led-b3") // => "LED-B3"
 * @example findIlluminant("C") // => undefined
 */
export const findIlluminant = (name: string): IlluminantName | undefined =>
  illuminantNames.find((known) => known === name.trim().toUpperCase());

/**
 * An observer by its angle.
 * @example findObserver("10°") // => 10
 * @example findObserver("5") // => undefined
 */
export function findObserver(text: string): ObserverName | undefined {
  const angle = /^\s*(2|10)\s*°?\s*$/.exec(text)?.[1];
  return angle === undefined ? undefined : angle === "2" ? 2 : 10;
}

/** How a reading is written. */
export const readingForm = `write one of ${illuminantNames.join(", ")}, a stroke, and 2 or 10, such as D65/10`;

/** The same as a pattern of JSON Schema. */
export const readingPattern = `^\\s*(?:${illuminantNames.map(anyCase).join("|")})\\s*/\\s*(?:2|10)\\s*°?\\s*$`;

/**
 * Illuminant and observer written with a stroke between them.
 * @example parseReading("D65/10").value // => ({ illuminant: "D65", observer: 10 })
 * @example parseReading("daylight").ok // => false
 */
export function parseReading(text: string): Outcome<Reading> {
  const [name = "", angle = "", ...more] = text.split("/");
  const illuminant = findIlluminant(name);
  const observer = findObserver(angle);
  return illuminant === undefined || observer === undefined || more.length > 0
    ? failed(error("reading-form", [], `"${text}" names no illuminant and observer`, readingForm))
    : done({ illuminant, observer });
}

/**
 * A reading in short.
 * @example readingSaid({ illuminant: "D65", observer: 10 }) // => "D65/10"
 */
export const readingSaid = ({ illuminant, observer }: Reading): string => `${illuminant}/${observer}`;
