import type { CauseCode, CostCause } from "../../core/cost/history/causes.js";
import { percent } from "../words/amounts.js";
import { significant, trimmed } from "../words/digits.js";
import { moneyDigits } from "../words/money.js";

const seconds = (value: number): string => `${trimmed(value, 0)} s`;
const minutes = (value: number): string => `${trimmed(value, 2)} min`;
/** Amounts are counted in L of concentrate or kg of powder, and m3 of water. */
const thousandth = (value: number): string => significant(1000 * value, 3);
const amount = (value: number): string => significant(value, 3);
const plainly = (value: number): string => trimmed(value, 3);

/** What each cause is called, and how its figure is said. */
const words: Readonly<
  Record<CauseCode, readonly [name: string, figure: "money" | ((value: number) => string)]>
> = {
  "blank-price": ["undyed part", "money"],
  yield: ["parts started per good one", plainly],
  "dye-price": ["price of dye", "money"],
  "dye-amount": ["mL or g of dye per part", thousandth],
  "water-price": ["price of water", "money"],
  "water-amount": ["L of water per part", thousandth],
  "electricity-price": ["price of electricity", "money"],
  "energy-amount": ["kWh per part", amount],
  "labour-rate": ["labour per hour", "money"],
  "load-size": ["parts a load", (value) => trimmed(value, 1)],
  strength: ["dip time by bath strength", percent],
  "dip-time": ["dip time", seconds],
  "handling-time": ["handling per load", seconds],
  "set-up-share": ["set-up, cleaning and dryer loading per part", minutes],
  consumables: ["consumables", "money"],
  equipment: ["equipment", "money"],
  "disposal-price": ["price of disposal", "money"],
  "disposal-amount": ["L of spent liquor per part", amount],
};

/** A change of cost with its sign, "+0.12"; one that does not show at the minor unit with two digits. */
export function signedMoney(change: number, currency: string | null): string {
  const size = Math.abs(change);
  const money = moneyDigits(currency)(size);
  return `${change < 0 ? "-" : "+"}${Number(money) === 0 ? significant(size, 2) : money}`;
}

/** "labour per hour +0.12 (34.00 -> 36.00)", the figures left out where they look the same or are not known. */
export function causeInWords({ code, change, before, now }: CostCause, currency: string | null): string {
  const [name, figure] = words[code];
  const say = figure === "money" ? moneyDigits(currency) : figure;
  const [was, is] = [say(before), say(now)];
  return `${name} ${signedMoney(change, currency)}${was === is ? "" : ` (${was} -> ${is})`}`;
}
