import type { Path } from "../source/source.js";
import type { YamlEntry, YamlMap, YamlNode } from "./yaml-tree.js";

/** Start and end in the text of a key and of the value behind it. */
interface Ranges {
  readonly key?: readonly [number, number];
  readonly value?: readonly [number, number];
  /** On one line, so that it can be marked whole. */
  readonly short: boolean;
}

const range = ({ start, end }: YamlNode): readonly [number, number] => [start, end];

/** Nodes by the name after &, of the last of that name. */
function anchorsOf(root: YamlNode): Map<string, YamlNode> {
  const found = new Map<string, YamlNode>();
  const walk = (node: YamlNode): void => {
    if (node.anchor !== undefined) found.set(node.anchor, node);
    if (node.kind === "list") node.items.forEach(walk);
    if (node.kind === "map") for (const { value } of node.entries) walk(value);
  };
  walk(root);
  return found;
}

const anchors = new WeakMap<YamlNode, Map<string, YamlNode>>();
const entriesBy = new WeakMap<YamlMap, Map<string, YamlEntry>>();

/** What an alias stands for; anything else is itself. */
function target(node: YamlNode, root: YamlNode): YamlNode | undefined {
  if (node.kind !== "alias") return node;
  let known = anchors.get(root);
  if (known === undefined) {
    known = anchorsOf(root);
    anchors.set(root, known);
  }
  return known.get(node.name);
}

/** The entries of a map by key, the first where a key stands twice. */
function entriesOf(map: YamlMap): Map<string, YamlEntry> {
  let index = entriesBy.get(map);
  if (index === undefined) {
    index = new Map();
    for (const entry of map.entries) if (!index.has(entry.key.text)) index.set(entry.key.text, entry);
    entriesBy.set(map, index);
  }
  return index;
}

/** The value of a key, and where a path ends: the deepest part of it that the document has. */
export function yamlRanges(root: YamlNode | null, text: string, path: Path): Ranges {
  if (root === null) return { short: false };
  let node = target(root, root);
  let key: YamlNode | undefined;
  let item: YamlNode = root;
  for (const step of path) {
    if (node?.kind === "map") {
      const found = entriesOf(node).get(String(step));
      if (found === undefined) break;
      key = found.key;
      item = found.value;
    } else if (node?.kind === "list" && typeof step === "number" && step < node.items.length) {
      key = undefined;
      item = node.items[step]!;
    } else break;
    node = target(item, root);
  }
  const [start, end] = range(item);
  const short = end > start && !text.slice(start, end).trimEnd().includes("\n");
  return { ...(key === undefined ? {} : { key: range(key) }), value: [start, end], short };
}
