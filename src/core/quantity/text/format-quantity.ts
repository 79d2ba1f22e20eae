import { convert, convertDifference, ownUnit } from "../convert.js";
import { type KindName, kindOf } from "../kinds.js";
import type { Quantity } from "../quantity.js";

/**
 * Writes a quantity so that parseQuantity reads the same value: in the kind's own unit, or in another one.
 * @example
 * formatQuantity("volume", {value: 6}) // => "6 L"
 * formatQuantity("volume", {value: 0.25, plusMinus: 0.01}, {to: "mL"}) // => "250 mL ± 10 mL"
 * formatQuantity("pricePerVolume", {value: 38}) // => "38 /L"
 * formatQuantity("percent", {value: 0.1}, {to: "%"}) // => "10 %"
 */
export function formatQuantity(
  name: KindName,
  quantity: Quantity,
  units: { readonly from?: string; readonly to?: string } = {},
): string {
  const kind = kindOf(name);
  const from = ownUnit(kind, units.from ?? kind.canonical);
  const to = ownUnit(kind, units.to ?? units.from ?? kind.canonical);
  const text = `${convert(quantity.value, from, to)} ${to.symbol}`.trim();
  return quantity.plusMinus === undefined
    ? text
    : `${text} ± ${convertDifference(quantity.plusMinus, from, to)} ${to.symbol}`.trim();
}
