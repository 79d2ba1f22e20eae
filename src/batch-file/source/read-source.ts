import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { isTextAt } from "../issues/schema-at.js";
import { batchSchema } from "../schema/batch.js";
import { YamlPlaces } from "../yaml/yaml-places.js";
import { mostFaults, yamlPlain } from "../yaml/yaml-plain.js";
import { readYaml } from "../yaml/yaml-read.js";
import { deepest, type YamlNode, yamlTree } from "../yaml/yaml-tree.js";
import { jsonShape } from "./json-shape.js";
import { type Lines, linesOf } from "./lines.js";
import type { Path, Source } from "./source.js";

/** Largest file to read [bytes]. */
export const largest = 4 * 1024 * 1024;

interface Read {
  readonly source?: Source;
  readonly diagnostics: readonly Diagnostic[];
}

/** Most entries in one list or map; the schema library cannot check more at once. */
const mostEntries = 20_000;

/** The first list or map that has too many entries. */
function crowded(value: unknown, path: Path = []): Path | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const entries = Object.entries(value);
  if (entries.length > mostEntries) return path;
  for (const [key, one] of entries) {
    const found = crowded(one, [...path, Array.isArray(value) ? Number(key) : key]);
    if (found !== undefined) return found;
  }
  return undefined;
}

const refused = (code: string, message: string, help: string, lines: Lines, at: number): Read => ({
  diagnostics: [{ code, severity: "error", message, help, spans: [lines.span(at, at + 1)] }],
});

/** Calls `tree` only when the first place is needed. */
function sourceOf(
  name: string,
  text: string,
  lines: Lines,
  plain: unknown,
  tree: () => YamlNode | null,
): Source {
  let places: YamlPlaces | undefined;
  return {
    name,
    plain,
    locate(path, part) {
      places ??= new YamlPlaces(tree(), text);
      const { key, value, short } = places.ranges(path);
      const found = part === "value" && short ? (value ?? key) : (key ?? value);
      return found === undefined ? lines.span(0, 1) : lines.span(...found);
    },
  };
}

/** Refuses a file with more entries in a list or map than can be checked. */
function notCrowded(read: Read): Read {
  const { source } = read;
  const path = source && crowded(source.plain);
  if (source === undefined || path === undefined) return read;
  return {
    diagnostics: [
      {
        code: "too-many",
        severity: "error",
        message: `${path.length === 0 ? "the file" : path.join(".")} has more than 20,000 entries`,
        help: "split it into several files",
        spans: [source.locate(path, "key")],
      },
    ],
  };
}

/** Keeps the first faults and counts the rest: a file of another kind may have a million. */
function firstOf({ source, diagnostics }: Read): Read {
  const more = diagnostics.length - mostFaults;
  if (more <= 0) return source === undefined ? { diagnostics } : { source, diagnostics };
  const last: Diagnostic = {
    code: "more-faults",
    severity: "error",
    message: `${more} more faults are not shown`,
    help: "correct those above first; is this a batch file?",
    spans: diagnostics[mostFaults]!.spans,
  };
  return { diagnostics: [...diagnostics.slice(0, mostFaults), last] };
}

/** Reads one file: YAML, or JSON if the name ends in .json. */
export const readSource = async (name: string, given: string): Promise<Read> =>
  notCrowded(firstOf(await readWhole(name, given)));

async function readWhole(name: string, given: string): Promise<Read> {
  const text = given.startsWith("\uFEFF") ? given.slice(1) : given;
  const lines = linesOf(name, text);
  const bytes = text.length > largest ? text.length : new TextEncoder().encode(text).length;
  if (bytes > largest)
    return refused(
      "too-large",
      "the file is larger than 4 MiB",
      "split it into several files and include them",
      lines,
      0,
    );
  const bad = /[\0\uFFFD]/.exec(text);
  if (bad !== null)
    return refused(
      "not-text",
      bad[0] === "\0" ? "the file contains a NUL character" : "the file is not UTF-8 text",
      "save it as plain text in UTF-8",
      lines,
      bad.index,
    );
  if (/\.json$/i.test(name) && /^\s*\{/.test(text)) {
    const shape = jsonShape(text);
    if (shape !== undefined && shape.depth <= deepest && shape.unique) {
      const tree = () => yamlTree(text)?.root ?? null;
      return { source: sourceOf(name, text, lines, shape.plain, tree), diagnostics: [] };
    }
  }
  const { root, diagnostics } = await readYaml(text, lines);
  if (root === undefined) return { diagnostics };
  const { plain, diagnostics: more } = yamlPlain(root, lines, (path) => isTextAt(batchSchema(), path));
  if (more.some((d) => d.code === "alias")) return { diagnostics: more };
  if (plain === null || typeof plain !== "object" || Array.isArray(plain))
    return refused(
      "not-a-batch",
      plain === null && more.length === 0 ? "the file contains no data" : "the file contains no keys",
      "a batch file begins with a line such as batch: spring-restock; put a space after each colon",
      lines,
      root?.start ?? 0,
    );
  return { source: sourceOf(name, text, lines, plain, () => root), diagnostics: more };
}
