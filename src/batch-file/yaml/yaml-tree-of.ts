import { isAlias, isMap, isPair, isScalar, isSeq, type Node, Scalar } from "yaml";
import type { YamlEntry, YamlNode, YamlScalar } from "./yaml-tree.js";

const placed = (node: Node): { start: number; end: number; anchor?: string } => {
  const anchor = (node as { anchor?: string }).anchor;
  const [start = 0, end = 0] = node.range ?? [];
  return { start, end, ...(anchor === undefined ? {} : { anchor }) };
};

const scalarOf = (node: Scalar): YamlScalar => ({
  kind: "scalar",
  ...placed(node),
  text: typeof node.value === "string" ? node.value : (node.source ?? ""),
  value: node.value,
  bare: node.type === Scalar.PLAIN && node.tag === undefined,
});

/** An empty scalar in place of a missing node. */
const nothing = (at: number): YamlScalar => ({
  kind: "scalar",
  start: at,
  end: at,
  text: "",
  value: null,
  bare: true,
});

/** The tree of a node that the yaml package composed without a fault; keys become texts. The depth must be checked before. */
export function treeOf(node: unknown): YamlNode | null {
  if (node === null || node === undefined) return null;
  if (isScalar(node)) return scalarOf(node);
  if (isAlias(node)) return { kind: "alias", ...placed(node), name: node.source };
  if (isSeq(node))
    return {
      kind: "list",
      ...placed(node),
      items: node.items.map((item) => treeOf(item) ?? nothing(node.range?.[1] ?? 0)),
    };
  if (!isMap(node)) throw new Error("a YAML node of an unknown kind");
  const entries = node.items.filter(isPair).map((pair): YamlEntry => {
    const key = isScalar(pair.key) ? scalarOf(pair.key) : nothing(node.range?.[0] ?? 0);
    return { key, value: treeOf(pair.value) ?? nothing(key.end) };
  });
  return { kind: "map", ...placed(node), flow: node.flow === true, entries };
}
