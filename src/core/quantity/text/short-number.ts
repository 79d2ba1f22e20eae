/**
 * A number for a message: at most `digits` significant digits, no zeros at the end; an exponent only below 1e-6 and
 * from 1e21 on.
 * @example
 * shortNumber(82.22222222222223) // => "82.22"
 * shortNumber(219.4, 2) // => "220"
 * shortNumber(0.004567) // => "0.004567"
 * shortNumber(1 / 3, 12) // => "0.333333333333"
 */
export const shortNumber = (value: number, digits = 4): string => String(Number(value.toPrecision(digits)));
