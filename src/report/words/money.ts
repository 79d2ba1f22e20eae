import { moneyText } from "../../core/cost/rounding.js";
import { decimals } from "./digits.js";

/** An amount at its currency's minor unit, without the currency: "12.30". */
export const moneyDigits =
  (currency: string | null) =>
  (amount: number): string =>
    currency === null ? decimals(amount, 2) : moneyText(amount, currency);

/** An amount with its currency: "12.30 EUR". */
export const money = (amount: number, currency: string | null): string =>
  currency === null ? decimals(amount, 2) : `${moneyText(amount, currency)} ${currency}`;
