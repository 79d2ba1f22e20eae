/**
 * A transform as 3MF writes it: twelve numbers, the four rows of a matrix without its last column (0 0 0 1),
 * applied to a row vector: x' = m[0] x + m[3] y + m[6] z + m[9], and so on.
 */
export type Transform = readonly number[];

/** Leaves everything where it is. */
export const identity: Transform = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

const number = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * Reads a decimal number from text; NaN if it is anything else or too large.
 * @example
 * decimal(" 1.5e2 ") // => 150
 * Number.isNaN(decimal("0x10")) // => true
 */
export function decimal(text: string | undefined): number {
  const word = text?.trim() ?? "";
  const value = number.test(word) ? Number(word) : Number.NaN;
  return Number.isFinite(value) ? value : Number.NaN;
}

/** Reads twelve numbers; nothing if they are not twelve finite numbers. */
export function readTransform(text: string): Transform | undefined {
  const numbers = text.trim().split(/\s+/).map(decimal);
  return numbers.length === 12 && numbers.every(Number.isFinite) ? numbers : undefined;
}

/** The transform that does first one, then the other. */
export function after(first: Transform, second: Transform): Transform {
  return Array.from({ length: 12 }, (_, i) => {
    const row = Math.floor(i / 3);
    const column = i % 3;
    let sum = row === 3 ? second[9 + column]! : 0;
    for (let k = 0; k < 3; k++) sum += first[3 * row + k]! * second[3 * k + column]!;
    return sum;
  });
}

/**
 * By what factor a transform scales volume; negative if it mirrors.
 * @example
 * determinant([2, 0, 0, 0, 3, 0, 0, 0, -1, 7, 8, 9]) // => -6
 */
export const determinant = (m: Transform): number =>
  m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
  m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
  m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!);
