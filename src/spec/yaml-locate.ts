import { type Document, isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from "yaml";
import type { Path } from "./source.js";

/** Start and end in the text of a key and of the value behind it. */
interface Ranges {
  readonly key?: readonly [number, number];
  readonly value?: readonly [number, number];
  /** On one line, so that it can be marked whole. */
  readonly short: boolean;
}

const range = (node: Node | null | undefined): readonly [number, number] | undefined =>
  node?.range === undefined || node.range === null ? undefined : [node.range[0], node.range[1]];

const target = (node: unknown, doc: Document): unknown => (isAlias(node) ? node.resolve(doc) : node);

const indexes = new WeakMap<YAMLMap, Map<string, Pair>>();

/** The pairs of a map by key, the first where a key stands twice. */
function pairsOf(map: YAMLMap): Map<string, Pair> {
  let index = indexes.get(map);
  if (index === undefined) {
    index = new Map();
    for (const pair of map.items) {
      const name = String(isScalar(pair.key) ? pair.key.value : "");
      if (!index.has(name)) index.set(name, pair);
    }
    indexes.set(map, index);
  }
  return index;
}

/** The value of a key, and where a path ends: the deepest part of it that the document has. */
export function yamlRanges(doc: Document, text: string, path: Path): Ranges {
  let node: unknown = target(doc.contents, doc);
  let pair: Pair<unknown, unknown> | undefined;
  let item: unknown = node;
  for (const step of path) {
    if (isMap(node)) {
      const found = pairsOf(node).get(String(step));
      if (found === undefined) break;
      pair = found;
      item = found.value;
    } else if (isSeq(node) && typeof step === "number" && step < node.items.length) {
      pair = undefined;
      item = node.items[step];
    } else break;
    node = target(item, doc);
  }
  const key = range(pair?.key as Node | undefined);
  const value = item === null || item === undefined ? undefined : range(item as Node);
  const short =
    value !== undefined && value[1] > value[0] && !text.slice(value[0], value[1]).trimEnd().includes("\n");
  return { ...(key === undefined ? {} : { key }), ...(value === undefined ? {} : { value }), short };
}
