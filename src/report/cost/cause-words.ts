import type { CostCause } from "../../core/cost/history/causes.js";
import { causeWords } from "../../core/cost/line/cost-lines.js";
import type { CauseFigure } from "../../core/cost/line/line-record.js";
import { percent } from "../words/amounts.js";
import { significant, trimmed } from "../words/digits.js";
import { moneyDigits } from "../words/money.js";

/** How the figure of a cause is written, by what it counts. */
const figures: Readonly<Record<Exclude<CauseFigure, "money">, (value: number) => string>> = {
  share: percent,
  number: (value) => trimmed(value, 3),
  parts: (value) => trimmed(value, 1),
  seconds: (value) => `${trimmed(value, 0)} s`,
  minutes: (value) => `${trimmed(value, 2)} min`,
  amount: (value) => significant(value, 3),
  thousandths: (value) => significant(1000 * value, 3),
};

/** A change of cost with its sign, "+0.12"; one that does not show at the minor unit with two digits. */
export function signedMoney(change: number, currency: string | null): string {
  const size = Math.abs(change);
  const money = moneyDigits(currency)(size);
  return `${change < 0 ? "-" : "+"}${Number(money) === 0 ? significant(size, 2) : money}`;
}

/** "labour per hour +0.12 (34.00 -> 36.00)", the figures left out where they look the same or are not known. */
export function causeInWords(
  { line, code, change, before, now }: CostCause,
  currency: string | null,
): string {
  const { name, figure } = causeWords(line, code);
  const say = figure === "money" ? moneyDigits(currency) : figures[figure];
  const [was, is] = [say(before), say(now)];
  return `${name} ${signedMoney(change, currency)}${was === is ? "" : ` (${was} -> ${is})`}`;
}
