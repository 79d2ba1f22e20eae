import { type Kind, type KindName, kindOf } from "./kinds.js";
import { findUnit } from "./parse/find-unit.js";
import type { Unit } from "./units.js";

/** The unit of a symbol in our own code; throws if it does not exist. */
export function ownUnit(kind: Kind, symbol: string): Unit {
  const found = findUnit(kind, symbol);
  if (found === undefined) throw new Error(`no unit ${symbol} for ${kind.what}`);
  return found;
}

/** Converts a difference, such as a half width: offsets do not count. */
export const convertDifference = (value: number, from: Unit, to: Unit): number =>
  from.symbol === to.symbol ? value : (value * (from.factor * to.divisor)) / (from.divisor * to.factor);

/** Converts a value. */
export const convert = (value: number, from: Unit, to: Unit): number =>
  from.symbol === to.symbol
    ? value
    : convertDifference(value + (from.offset ?? 0), from, to) - (to.offset ?? 0);

/**
 * Converts a value of a kind to another unit.
 * @example
 * convertTo("volume", 1, "US gal", "L") // => 3.785411784
 * convertTo("temperature", 176, "°F", "°C") // => 80
 * convertTo("area", 41, "cm2", "dm2") // => 0.41
 */
export const convertTo = (kind: KindName, value: number, from: string, to: string): number =>
  convert(value, ownUnit(kindOf(kind), from), ownUnit(kindOf(kind), to));
