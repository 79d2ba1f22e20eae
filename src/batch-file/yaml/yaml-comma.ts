import type { YamlMap } from "./yaml-tree.js";

/**
 * Rejoins a number that its comma cuts in two in a map in braces: in `{ volume: 6,5 L }` YAML sees a volume of 6 and a
 * key "5 L". The value becomes the text "6,5 L", whose reader then reports the comma. A space after the comma, or a colon
 * after the key, shows that the user means a key.
 */
export function joinCutNumbers(map: YamlMap): void {
  if (!map.flow) return;
  const entries: typeof map.entries = [];
  /** The end of the last value, so that a long one is not searched again and again. */
  let tail = "";
  for (const entry of map.entries) {
    const { key, value } = entry;
    const head = entries.at(-1)?.value;
    const alone = value.kind === "scalar" && value.bare && value.start === value.end;
    if (
      alone &&
      key.bare &&
      head?.kind === "scalar" &&
      head.bare &&
      /^\d/.test(key.text) &&
      /\d$/.test(tail) &&
      key.start === head.end + 1
    ) {
      head.text = `${head.text},${key.text}`;
      head.value = head.text;
      head.end = key.end;
      tail = key.text;
    } else {
      entries.push(entry);
      tail = value.kind === "scalar" ? value.text : "";
    }
  }
  map.entries = entries;
}
