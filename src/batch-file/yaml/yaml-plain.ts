import { mapped } from "../../core/mapped.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Lines } from "../source/lines.js";
import type { Path } from "../source/source.js";
import { joinCutNumbers } from "./yaml-comma.js";
import { deepest, type YamlNode } from "./yaml-tree.js";

/** Most faults of form that are shown for one file. */
export const mostFaults = 200;

/** Most values that aliases may repeat. */
const mostRepeated = 20_000;

/**
 * Plain data from a tree, and the faults that YAML allows but a batch file does not: equal keys in one map, and aliases
 * without an anchor, inside their own anchor, or with too many repeats. A number where a text belongs is kept as
 * written, so that 1.10 and 007 keep their zeros.
 */
export function yamlPlain(
  root: YamlNode | null,
  lines: Lines,
  isText: (path: Path) => boolean,
): { plain: unknown; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const anchors = new Map<string, YamlNode>();
  const inside = new Set<YamlNode>();
  let repeated = 0;
  let refused = false;
  const path: (string | number)[] = [];
  const report = (code: string, node: YamlNode, message: string, help: string, first?: YamlNode): void => {
    // The rest are only counted: finding a place in a long line takes time.
    const next = diagnostics[mostFaults];
    if (next !== undefined) {
      diagnostics.push(next);
      return;
    }
    const spans = [lines.span(node.start, node.end)];
    if (first !== undefined) spans.push({ ...lines.span(first.start, first.end), label: "first given here" });
    diagnostics.push({ code, severity: "error", message, help, spans });
  };

  function below(step: string | number, node: YamlNode, depth: number, again: boolean): unknown {
    path.push(step);
    const plain = walk(node, depth, again);
    path.pop();
    return plain;
  }

  function walk(node: YamlNode, depth: number, again: boolean): unknown {
    if (refused) return null;
    if (node.kind === "alias") {
      const target = anchors.get(node.name);
      if (target === undefined) {
        report("alias", node, `*${node.name} has no anchor above it`, "write the value itself");
        return null;
      }
      if (inside.has(target)) {
        report("alias", node, `*${node.name} is inside the value it names`, "write the value itself");
        return null;
      }
      if (depth > deepest || repeated >= mostRepeated) {
        report("alias", node, "the aliases repeat too much", "write the values themselves");
        refused = true;
        return null;
      }
      return walk(target, depth, true);
    }
    if (again) repeated++;
    else if (node.anchor !== undefined) anchors.set(node.anchor, node);
    if (node.kind === "scalar") {
      const { value, text } = node;
      const otherwise = typeof value === "number" && text !== String(value);
      return otherwise && isText(path) ? text : value;
    }
    inside.add(node);
    let plain: unknown;
    if (node.kind === "list") plain = mapped(node.items, (item, i) => below(i, item, depth + 1, again));
    else {
      joinCutNumbers(node);
      const entries = new Map<string, YamlNode>();
      const object: Record<string, unknown> = {};
      for (const { key, value } of node.entries) {
        const name = key.text;
        const first = entries.get(name);
        if (first !== undefined && !again)
          report(
            "duplicate-key",
            key,
            `${name} is given twice`,
            value.kind === "map" || value.kind === "list"
              ? "keep one of the two, and move the lines below the other to it"
              : "keep one of the two",
            first,
          );
        if (name === "__proto__")
          report("reserved-name", key, "this name cannot be used", "use another name");
        else if (first === undefined) object[name] = below(name, value, depth + 1, again);
        entries.set(name, first ?? key);
      }
      plain = object;
    }
    inside.delete(node);
    return plain;
  }
  return { plain: root === null ? null : walk(root, 0, false), diagnostics };
}
