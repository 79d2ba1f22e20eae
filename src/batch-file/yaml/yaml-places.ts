import type { Path } from "../source/source.js";
import type { YamlEntry, YamlMap, YamlNode } from "./yaml-tree.js";

/** Start and end in the text of a key and of its value. */
interface Ranges {
  readonly key?: readonly [number, number];
  readonly value?: readonly [number, number];
  /** On one line, so that it can be marked whole. */
  readonly short: boolean;
}

const range = ({ start, end }: YamlNode): readonly [number, number] => [start, end];

/** Nodes by anchor; the last of equal anchors counts. */
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

/** The entries of a map by key; the first of equal keys counts. */
function byKey({ entries }: YamlMap): Map<string, YamlEntry> {
  const index = new Map<string, YamlEntry>();
  for (const entry of entries) if (!index.has(entry.key.text)) index.set(entry.key.text, entry);
  return index;
}

/** Places in one document; builds its indexes on first use. */
export class YamlPlaces {
  private readonly root: YamlNode | null;
  private readonly text: string;
  private anchors: Map<string, YamlNode> | undefined;
  private readonly entries = new Map<YamlMap, Map<string, YamlEntry>>();

  constructor(root: YamlNode | null, text: string) {
    this.root = root;
    this.text = text;
  }

  /** The places of the key and value at a path, or at the deepest part of it that the document has. */
  ranges(path: Path): Ranges {
    if (this.root === null) return { short: false };
    let node = this.target(this.root);
    let key: YamlNode | undefined;
    let item: YamlNode = this.root;
    for (const step of path) {
      if (node?.kind === "map") {
        const found = this.entriesOf(node).get(String(step));
        if (found === undefined) break;
        key = found.key;
        item = found.value;
      } else if (node?.kind === "list" && typeof step === "number" && step < node.items.length) {
        key = undefined;
        item = node.items[step]!;
      } else break;
      node = this.target(item);
    }
    const [start, end] = range(item);
    const short = end > start && !this.text.slice(start, end).trimEnd().includes("\n");
    return { ...(key === undefined ? {} : { key: range(key) }), value: [start, end], short };
  }

  /** The node that an alias refers to; any other node itself. */
  private target(node: YamlNode): YamlNode | undefined {
    if (node.kind !== "alias") return node;
    this.anchors ??= anchorsOf(this.root!);
    return this.anchors.get(node.name);
  }

  private entriesOf(map: YamlMap): Map<string, YamlEntry> {
    const index = this.entries.get(map) ?? byKey(map);
    this.entries.set(map, index);
    return index;
  }
}
