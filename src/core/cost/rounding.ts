import { minorDigits } from "../quantity/currencies.js";

/** The shortest decimal that reads back as the same double, as whole digits × 10^exponent. */
function shortest(amount: number): { digits: bigint; exponent: number } {
  const [mantissa = "", power = "0"] = Math.abs(amount).toString().split("e");
  const [whole = "", fraction = ""] = mantissa.split(".");
  return { digits: BigInt(whole + fraction), exponent: Number(power) - fraction.length };
}

/**
 * An amount with a fixed number of decimals, half to even, as a decimal string.
 *
 * What counts as half is decided on the shortest decimal that reads back as the same double, which is what a
 * person typed or saw: 2.675 is a half although its double lies below. A sum that arithmetic left at
 * 1.0049999999999999 is below the half and stays so. A zero has no sign.
 * @example
 * roundedText(2.675, 2) // => "2.68"
 * roundedText(2.665, 2) // => "2.66"
 * roundedText(-0.004, 2) // => "0.00"
 */
export function roundedText(amount: number, decimals: number): string {
  if (!Number.isFinite(amount)) return String(amount);
  const quick = clearlyRounded(amount, decimals);
  return quick ?? exactlyRounded(amount, decimals);
}

/** The same where no half is near, in a tenth of the time; undefined where one is, or digits run out. */
export function clearlyRounded(amount: number, decimals: number): string | undefined {
  const scaled = Math.abs(amount) * 10 ** decimals;
  if (!(scaled < 1e9) || Math.abs((scaled % 1) - 0.5) < 1e-5) return undefined;
  const text = amount.toFixed(decimals);
  return scaled < 0.5 && text.startsWith("-") ? text.slice(1) : text;
}

/** The same for any amount, by whole numbers. */
export function exactlyRounded(amount: number, decimals: number): string {
  const { digits, exponent } = shortest(amount);
  const surplus = -exponent - decimals;
  let kept = surplus < 0 ? digits * 10n ** BigInt(-surplus) : digits;
  if (surplus > 0) {
    const unit = 10n ** BigInt(surplus);
    const twiceRest = 2n * (digits % unit);
    kept = digits / unit;
    if (twiceRest > unit || (twiceRest === unit && kept % 2n === 1n)) kept += 1n;
  }
  const text = kept.toString().padStart(decimals + 1, "0");
  const point = text.length - decimals;
  const unsigned = decimals === 0 ? text : `${text.slice(0, point)}.${text.slice(point)}`;
  return amount < 0 && kept > 0n ? `-${unsigned}` : unsigned;
}

/**
 * Money as it is printed: half to even at the currency's minor unit.
 * @source iso4217 list one
 * @example
 * moneyText(1.005, "EUR") // => "1.00"
 * moneyText(1.5, "JPY") // => "2"
 * moneyText(1.0005, "KWD") // => "1.000"
 */
export const moneyText = (amount: number, currency: string): string =>
  roundedText(amount, minorDigits(currency));

/**
 * Money rounded half to even at the currency's minor unit; ties as in `roundedText`.
 * @source iso4217 list one
 * @example
 * roundMoney(2.675, "EUR") // => 2.68
 * roundMoney(2.5, "JPY") // => 2
 */
export const roundMoney = (amount: number, currency: string): number => Number(moneyText(amount, currency));
