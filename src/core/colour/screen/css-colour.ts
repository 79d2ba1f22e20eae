import convert from "color-convert";
import { done, error, failed, type Outcome } from "../../fault.js";
import type { Srgb } from "./srgb.js";

const hexPattern = /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i;
const number = String.raw`([+-]?(?:\d+\.?\d*|\.\d+))`;
const hslPattern = new RegExp(
  `^hsl\\(\\s*${number}(?:deg)?\\s*[,\\s]\\s*${number}%\\s*[,\\s]\\s*${number}%\\s*\\)$`,
  "i",
);
const asHex = (rgb: readonly number[]): string =>
  `#${convert.rgb.hex([rgb[0]!, rgb[1]!, rgb[2]!]).toLowerCase()}`;

const refuse = (text: string): Outcome<never> =>
  failed(
    error(
      "colour-unknown",
      [],
      `"${text}" is not a colour`,
      'Write "#d9603b", "#d63", a CSS name such as "tomato", or "hsl(14, 68%, 54%)".',
    ),
  );

/**
 * The `#rrggbb` of three or six digits behind a #; undefined for any other text.
 * @example parseHex("#D63") // => "#dd6633"
 * @example parseHex("d9603b") // => undefined
 */
export const parseHex = (text: string): string | undefined =>
  hexPattern.test(text) ? asHex(convert.hex.rgb(text.slice(1))) : undefined;

/**
 * The `#rrggbb` of a colour written for the screen: hex of three or six digits, a CSS name, or hsl(h, s%, l%).
 * @example cssToHex("#D63").value // => "#dd6633"
 * @example cssToHex("tomato").value // => "#ff6347"
 * @example cssToHex("hsl(120, 100%, 25%)").value // => "#008000"
 * @example cssToHex("#12345").ok // => false
 */
export function cssToHex(text: string): Outcome<string> {
  const trimmed = text.trim();
  const hex = parseHex(trimmed);
  if (hex !== undefined) return done(hex);
  const hsl = hslPattern.exec(trimmed);
  if (hsl !== null) {
    const [h, s, l] = hsl.slice(1).map(Number) as [number, number, number];
    if (s < 0 || s > 100 || l < 0 || l > 100)
      return failed(
        error("colour-range", [], `saturation and lightness of "${text}" must lie in 0 % to 100 %`),
      );
    return done(asHex(convert.hsl.rgb([((h % 360) + 360) % 360, s, l])));
  }
  if (!/^[a-z]+$/i.test(trimmed)) return refuse(text);
  try {
    return done(asHex(convert.keyword.rgb(trimmed.toLowerCase())));
  } catch {
    // An unknown name has no entry to spread.
    return refuse(text);
  }
}

/**
 * sRGB values, 0..1, of a `#rrggbb` that was checked.
 * @example hexToSrgb("#ff0000") // => [1, 0, 0]
 */
export const hexToSrgb = (hex: string): Srgb =>
  convert.hex.rgb(hex.replace("#", "")).map((value) => value / 255) as unknown as Srgb;
