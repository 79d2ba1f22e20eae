import { type KindName, kindOf } from "../kinds.js";
import { numberPattern } from "../parse/number-text.js";
import { numberUpTo } from "./number-up-to.js";
import { unitPattern } from "./unit-pattern.js";

/** Limits that a pattern can check. */
export interface PatternLimits {
  /** Above 0. */
  readonly positive?: boolean;
  /** Only for a share: the largest fraction, a whole number of percent. */
  readonly most?: number;
}

/** The spellings of ±. */
export const plusMinus = "(?:±|\\+/?-)";

/** A number of zeros only, not the first digits of another one. */
const zero = "\\+?[0.]+(?![\\d.eE])";

/**
 * Source of a regular expression, without anchors, for the texts that `parseQuantity` reads as a quantity of a kind. It
 * accepts every text that the parser reads, and a few that the parser refuses. It works with and without the flag `u`.
 * @example new RegExp(`^${quantityPattern("volume")}$`).test("6 L") // => true
 * @example new RegExp(`^${quantityPattern("volume")}$`).test("6 kg") // => false
 * @example new RegExp(`^${quantityPattern("volume")}$`).test("6,5 L") // => false
 * @example new RegExp(`^${quantityPattern("percent", { most: 1 })}$`).test("197 %") // => false
 */
export function quantityPattern(name: KindName, limits: PatternLimits = {}): string {
  const kind = kindOf(name);
  const isShare = name === "percent";
  const unit = unitPattern(kind);
  const sign = kind.negative === true ? "[+−-]?" : "\\+?";
  const sum = (number: string): string => {
    const term = `${sign}${number}\\s*${unit}`;
    return kind.sums === true ? `${term}(?:\\s+${term})*` : term;
  };
  const most = isShare && limits.most !== undefined ? Math.round(100 * limits.most) : undefined;
  const value = sum(most === undefined ? numberPattern : numberUpTo(most));
  const half = sum(numberPattern);
  const shareOrHalf =
    isShare || name === "temperature"
      ? half
      : `(?:${numberPattern}\\s*${unitPattern(kindOf("percent"))}|${half})`;
  // "12 ± 3 s": both numbers share the unit.
  const shared = isShare || unit === "" ? "" : `(?:${numberPattern}\\s*${plusMinus}\\s*)?`;
  const none = kind.sums === true ? `${zero}\\D*$` : zero;
  const positive = limits.positive === true ? `(?!${none})` : "";
  return `\\s*${positive}${shared}${value}(?:\\s*${plusMinus}\\s*${shareOrHalf})?\\s*`;
}
