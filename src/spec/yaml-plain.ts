import { type Document, isAlias, isMap, isScalar, isSeq, type Node } from "yaml";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { Lines } from "./lines.js";
import type { Path } from "./source.js";
import { joinCutNumbers } from "./yaml-comma.js";
import { deepest } from "./yaml-depth.js";

/** Most values that aliases may repeat. */
const mostRepeated = 20_000;

const rangeOf = (node: Node): readonly [number, number] => [node.range?.[0] ?? 0, node.range?.[1] ?? 1];

/**
 * Plain data from a document, and what YAML allows but a batch file does not: keys twice in one map,
 * aliases that lead nowhere, into themselves, or repeat too much. A number that stands for a text is the text
 * as written, so that 1.10 and 007 keep their noughts.
 */
export function yamlPlain(
  doc: Document,
  lines: Lines,
  isText: (path: Path) => boolean,
): { plain: unknown; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const anchors = new Map<string, Node>();
  const inside = new Set<Node>();
  let repeated = 0;
  let refused = false;
  const path: (string | number)[] = [];
  const report = (code: string, node: Node, message: string, help: string, first?: Node): void => {
    const spans = [lines.span(...rangeOf(node))];
    if (first !== undefined) spans.push({ ...lines.span(...rangeOf(first)), label: "first given here" });
    diagnostics.push({ code, severity: "error", message, help, spans });
  };

  function below(step: string | number, node: unknown, depth: number, again: boolean): unknown {
    path.push(step);
    const plain = walk(node, depth, again);
    path.pop();
    return plain;
  }

  function walk(node: unknown, depth: number, again: boolean): unknown {
    if (node === null || node === undefined || refused) return null;
    const here = node as Node;
    if (isAlias(here)) {
      const target = anchors.get(here.source);
      if (target === undefined) {
        report("alias", here, `*${here.source} names no anchor above it`, "write the value itself");
        return null;
      }
      if (inside.has(target)) {
        report("alias", here, `*${here.source} stands inside what it names`, "write the value itself");
        return null;
      }
      if (depth > deepest || repeated > mostRepeated) {
        report("alias", here, "the aliases repeat too much", "write the values themselves");
        refused = true;
        return null;
      }
      return walk(target, depth, true);
    }
    if (again) repeated++;
    if (!again && "anchor" in here && here.anchor !== undefined) anchors.set(here.anchor as string, here);
    if (isScalar(here)) {
      const { value, source } = here;
      const otherwise = typeof value === "number" && source !== undefined && source !== String(value);
      return otherwise && isText(path) ? source : value;
    }
    inside.add(here);
    let plain: unknown = null;
    if (isSeq(here)) plain = here.items.map((item, i) => below(i, item, depth + 1, again));
    else if (isMap(here)) {
      joinCutNumbers(here);
      const entries = new Map<string, Node>();
      const object: Record<string, unknown> = {};
      for (const { key, value } of here.items) {
        const name = String(isScalar(key) ? key.value : "");
        const first = entries.get(name);
        if (first !== undefined && !again)
          report("duplicate-key", key as Node, `${name} is given twice`, "keep one of the two", first);
        if (name === "__proto__")
          report("reserved-name", key as Node, "this name cannot be used", "use another name");
        else if (first === undefined) object[name] = below(name, value, depth + 1, again);
        entries.set(name, first ?? (key as Node));
      }
      plain = object;
    }
    inside.delete(here);
    return plain;
  }
  return { plain: walk(doc.contents, 0, false), diagnostics };
}
