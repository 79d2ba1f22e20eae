import { moneyText } from "../../core/cost/rounding.js";
import { minorDigits } from "../../core/quantity/currencies.js";
import { decimals } from "./digits.js";

/** An amount at its currency's minor unit, without the currency: "12.30". */
export const moneyDigits =
  (currency: string | null) =>
  (amount: number): string =>
    currency === null ? decimals(amount, 2) : moneyText(amount, currency);

/** An amount with its currency: "12.30 EUR". */
export const money = (amount: number, currency: string | null): string =>
  currency === null ? decimals(amount, 2) : `${moneyText(amount, currency)} ${currency}`;

/** An amount to one digit more than its currency has, for shares of a minor unit: "0.123". */
export const fineMoney = (amount: number, currency: string | null): string =>
  decimals(amount, 1 + (currency === null ? 2 : minorDigits(currency)));
