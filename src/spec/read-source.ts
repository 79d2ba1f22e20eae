import { Composer, type Document, Parser } from "yaml";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { jsonShape } from "./json-shape.js";
import { type Lines, linesOf } from "./lines.js";
import type { Source } from "./source.js";
import { deepest, tooDeepAt } from "./yaml-depth.js";
import { yamlFault } from "./yaml-fault.js";
import { yamlRanges } from "./yaml-locate.js";
import { yamlPlain } from "./yaml-plain.js";

/** Largest file that is read [bytes]. */
export const largest = 4 * 1024 * 1024;

interface Read {
  readonly source?: Source;
  readonly diagnostics: readonly Diagnostic[];
}

const refused = (code: string, message: string, help: string, lines: Lines, at: number): Read => ({
  diagnostics: [{ code, severity: "error", message, help, spans: [lines.span(at, at + 1)] }],
});

/** The document of a YAML text that has been found well formed, or what is wrong with it. */
function compose(text: string, lines: Lines): { doc?: Document; diagnostics: Diagnostic[] } {
  const tokens = [...new Parser().parse(text)];
  const deep = tooDeepAt(tokens);
  if (deep !== undefined)
    return {
      diagnostics: [
        {
          code: "too-deep",
          severity: "error",
          message: `nested more than ${deepest} deep`,
          help: "a batch file nests 5 deep at most: check the brackets",
          spans: [lines.span(deep, deep + 1)],
        },
      ],
    };
  const options = { stringKeys: true, uniqueKeys: false, prettyErrors: false, version: "1.2" } as const;
  const docs = [...new Composer(options).compose(tokens, true, text.length)];
  const doc = docs[0]!;
  const diagnostics = docs.flatMap((d) => [...d.errors, ...d.warnings]).map((e) => yamlFault(e, lines));
  if (docs.length > 1 && docs[1]!.contents !== null)
    diagnostics.push({
      code: "yaml",
      severity: "error",
      message: "a second document begins here",
      help: "a file holds one batch: remove the line ---, or put the rest in a file of its own",
      spans: [lines.span(docs[1]!.range[0], docs[1]!.range[0] + 1)],
    });
  if (doc.directives.yaml.explicit === true && doc.directives.yaml.version !== "1.2")
    diagnostics.push({
      code: "yaml",
      severity: "error",
      message: `YAML ${doc.directives.yaml.version} is asked for`,
      help: "a batch file is YAML 1.2: remove the line that begins with %YAML",
      spans: [lines.span(0, 5)],
    });
  return { doc: doc as unknown as Document, diagnostics };
}

const sourceOf = (
  name: string,
  text: string,
  lines: Lines,
  plain: unknown,
  document: () => Document | undefined,
): Source => ({
  name,
  plain,
  locate(path, part) {
    const doc = document();
    if (doc === undefined) return lines.span(0, 1);
    const { key, value, short } = yamlRanges(doc, text, path);
    const found = part === "value" && short ? (value ?? key) : (key ?? value);
    return found === undefined ? lines.span(0, 1) : lines.span(...found);
  },
});

/** Reads one file: YAML, or JSON where the name ends in .json. */
export function readSource(name: string, given: string): Read {
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
      let doc: Document | undefined;
      return {
        source: sourceOf(name, text, lines, shape.plain, () => {
          doc ??= compose(text, lines).doc;
          return doc;
        }),
        diagnostics: [],
      };
    }
  }
  const { doc, diagnostics } = compose(text, lines);
  if (doc === undefined || diagnostics.length > 0) return { diagnostics };
  const { plain, diagnostics: more } = yamlPlain(doc, lines);
  if (plain === null || typeof plain !== "object" || Array.isArray(plain))
    return refused(
      "not-a-batch",
      plain === null && more.length === 0 ? "the file holds nothing" : "the file holds no keys",
      "a batch file begins with a line such as batch: spring-restock; put a space after each colon",
      lines,
      doc.contents?.range?.[0] ?? 0,
    );
  return { source: sourceOf(name, text, lines, plain, () => doc), diagnostics: more };
}
