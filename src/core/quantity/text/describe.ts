import { type KindName, kindOf } from "../kinds.js";
import type { Quantity } from "../quantity.js";
import { shortNumber } from "./short-number.js";

/**
 * A quantity for a message, to four digits; one written in a US measure also appears in that.
 * @example
 * describeQuantity("volume", {value: 7.570823568, customary: "2 US gal"}) // => "2 US gal (7.571 L)"
 * describeQuantity("temperature", {value: 80}) // => "80 °C"
 */
export function describeQuantity(kind: KindName, quantity: Quantity, unit?: string): string {
  const own = `${shortNumber(quantity.value)} ${unit ?? kindOf(kind).canonical}`;
  return quantity.customary === undefined ? own : `${quantity.customary} (${own})`;
}
