import { isMap, isScalar, type Node, Scalar, type YAMLMap } from "yaml";

const isPlain = (node: unknown): node is Scalar & { source: string; range: [number, number, number] } =>
  isScalar(node) &&
  node.type === Scalar.PLAIN &&
  typeof node.source === "string" &&
  Array.isArray(node.range);

/**
 * Puts together again what a comma in a number has cut in a map in braces: in `{ volume: 6,5 L }` YAML sees a
 * volume of 6 and a key "5 L". The value becomes the text "6,5 L", which whoever reads it refuses. A space
 * after the comma, or a colon after the key, says that a key is meant.
 */
export function joinCutNumbers(map: YAMLMap): void {
  if (!isMap(map) || map.flow !== true) return;
  const items: typeof map.items = [];
  for (const pair of map.items) {
    const { key, value } = pair;
    const head = items.at(-1)?.value as Node | undefined;
    const empty = value === null || value === undefined || (isScalar(value) && value.source === "");
    if (
      empty &&
      isPlain(key) &&
      isPlain(head) &&
      /^\d/.test(key.source) &&
      /\d$/.test(head.source) &&
      key.range[0] === head.range[1] + 1
    ) {
      head.source = `${head.source},${key.source}`;
      head.value = head.source;
      head.range = [head.range[0], key.range[1], key.range[2]];
    } else items.push(pair);
  }
  map.items = items;
}
