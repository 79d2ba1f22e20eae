import type { YamlMap } from "./yaml-tree.js";

/**
 * Puts together again what a comma in a number has cut in a map in braces: in `{ volume: 6,5 L }` YAML sees a
 * volume of 6 and a key "5 L". The value becomes the text "6,5 L", which whoever reads it refuses. A space
 * after the comma, or a colon after the key, says that a key is meant.
 */
export function joinCutNumbers(map: YamlMap): void {
  if (!map.flow) return;
  const entries: typeof map.entries = [];
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
      /\d$/.test(head.text) &&
      key.start === head.end + 1
    ) {
      head.text = `${head.text},${key.text}`;
      head.value = head.text;
      head.end = key.end;
    } else entries.push(entry);
  }
  map.entries = entries;
}
