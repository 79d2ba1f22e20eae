import type { YamlMap } from "./yaml-tree.js";

/**
 * Puts together again what a comma in a number has cut in a map in braces: in `{ volume: 6,5 L }` YAML sees a
 * volume of 6 and a key "5 L". The value becomes the text "6,5 L", which whoever reads it refuses. A space
 * after the comma, or a colon after the key, says that a key is meant.
 */
export function joinCutNumbers(map: YamlMap): void {
  if (!map.flow) return;
  const entries: typeof map.entries = [];
  /** What stands at the end of the last value: the whole of a long one is not looked at again and again. */
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
