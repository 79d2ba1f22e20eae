import { isMap } from "./is-map.js";

/**
 * Data of a JSON text with its depth and whether every key is unique in its object; undefined if the text is not JSON.
 * JSON.parse silently keeps the last of two equal keys, so one scan counts the colons outside strings: their count must
 * equal the number of keys in the data.
 */
export function jsonShape(text: string): { plain: unknown; depth: number; unique: boolean } | undefined {
  let depth = 0;
  let deepest = 0;
  let colons = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 0x22) {
      i++;
      while (i < text.length && text.charCodeAt(i) !== 0x22) i += text.charCodeAt(i) === 0x5c ? 2 : 1;
    } else if (c === 0x7b || c === 0x5b) deepest = Math.max(deepest, ++depth);
    else if (c === 0x7d || c === 0x5d) depth--;
    else if (c === 0x3a) colons++;
  }
  if (deepest > 1000) return { plain: undefined, depth: deepest, unique: false };
  let keys = 0;
  let reserved = false;
  try {
    const plain: unknown = JSON.parse(text, (key, value) => {
      if (key === "__proto__") reserved = true;
      if (isMap(value)) keys += Object.keys(value).length;
      return value;
    });
    return { plain, depth: deepest, unique: keys === colons && !reserved };
  } catch {
    return undefined;
  }
}
