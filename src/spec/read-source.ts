import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { jsonShape } from "./json-shape.js";
import { type Lines, linesOf } from "./lines.js";
import { batchSchema } from "./schema/batch.js";
import { isTextAt } from "./schema-at.js";
import type { Source } from "./source.js";
import { yamlRanges } from "./yaml-locate.js";
import { yamlPlain } from "./yaml-plain.js";
import { readYaml } from "./yaml-read.js";
import { deepest, type YamlNode, yamlTree } from "./yaml-tree.js";

/** Largest file that is read [bytes]. */
export const largest = 4 * 1024 * 1024;

interface Read {
  readonly source?: Source;
  readonly diagnostics: readonly Diagnostic[];
}

const refused = (code: string, message: string, help: string, lines: Lines, at: number): Read => ({
  diagnostics: [{ code, severity: "error", message, help, spans: [lines.span(at, at + 1)] }],
});

const sourceOf = (
  name: string,
  text: string,
  lines: Lines,
  plain: unknown,
  tree: () => YamlNode | null,
): Source => ({
  name,
  plain,
  locate(path, part) {
    const { key, value, short } = yamlRanges(tree(), text, path);
    const found = part === "value" && short ? (value ?? key) : (key ?? value);
    return found === undefined ? lines.span(0, 1) : lines.span(...found);
  },
});

/** Reads one file: YAML, or JSON where the name ends in .json. */
export async function readSource(name: string, given: string): Promise<Read> {
  const text = given.startsWith("\uFEFF") ? given.slice(1) : given;
  const lines = linesOf(name, text);
  const bytes = text.length > largest ? text.length : new TextEncoder().encode(text).length;
  if (bytes > largest)
    return refused("too-large", "the file is larger than 4 MiB", "part it and include the parts", lines, 0);
  const bad = /[\0\uFFFD]/.exec(text);
  if (bad !== null)
    return refused(
      "not-text",
      bad[0] === "\0" ? "the file holds a NUL character" : "the file is not UTF-8 text",
      "save it as plain text in UTF-8",
      lines,
      bad.index,
    );
  if (/\.json$/i.test(name) && /^\s*\{/.test(text)) {
    const shape = jsonShape(text);
    if (shape !== undefined && shape.depth <= deepest && shape.unique) {
      let root: YamlNode | null | undefined;
      return {
        source: sourceOf(name, text, lines, shape.plain, () => {
          if (root === undefined) root = yamlTree(text)?.root ?? null;
          return root;
        }),
        diagnostics: [],
      };
    }
  }
  const { root, diagnostics } = await readYaml(text, lines);
  if (root === undefined) return { diagnostics };
  const { plain, diagnostics: more } = yamlPlain(root, lines, (path) => isTextAt(batchSchema(), path));
  if (more.some((d) => d.code === "alias")) return { diagnostics: more };
  if (plain === null || typeof plain !== "object" || Array.isArray(plain))
    return refused(
      "not-a-batch",
      plain === null && more.length === 0 ? "the file holds nothing" : "the file holds no keys",
      "a batch file begins with a line such as batch: spring-restock; put a space after each colon",
      lines,
      root?.start ?? 0,
    );
  return { source: sourceOf(name, text, lines, plain, () => root), diagnostics: more };
}
