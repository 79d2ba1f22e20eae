import { Composer } from "yaml";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Lines } from "../source/lines.js";
import { tokensOf } from "./yaml-depth.js";
import { yamlFault } from "./yaml-fault.js";
import { wrongIndent } from "./yaml-indent.js";
import { openings } from "./yaml-opening.js";
import { deepest, type YamlNode } from "./yaml-tree.js";
import { treeOf } from "./yaml-tree-of.js";

/** The tree of a YAML text as the yaml package reads it, or its faults in the words of this tool. */
export function composeYaml(
  text: string,
  lines: Lines,
): { readonly root: YamlNode | null } | { readonly diagnostics: readonly Diagnostic[] } {
  const { tokens, tooDeep: deep } = tokensOf(text);
  if (deep !== undefined)
    return {
      diagnostics: [
        {
          code: "too-deep",
          severity: "error",
          message: `the file nests more than ${deepest} deep`,
          help: "a batch file nests 5 deep at most: check the brackets",
          spans: [lines.span(deep, deep + 1)],
        },
      ],
    };
  const options = { stringKeys: true, uniqueKeys: false, prettyErrors: false, version: "1.2" } as const;
  const docs = [...new Composer(options).compose(tokens, true, text.length)];
  const doc = docs[0]!;
  const open = docs.some((d) => d.errors.length > 0) ? openings(tokens) : [];
  const faults = docs.flatMap((d) => [...d.errors, ...d.warnings]);
  const indent = faults.length > 0 ? wrongIndent(text, lines) : undefined;
  const diagnostics: Diagnostic[] = faults
    .filter(({ pos }) => indent === undefined || pos[0] < indent.from)
    .map((e) => yamlFault(e, text, lines, open));
  if (indent !== undefined) return { diagnostics: [...diagnostics, indent.diagnostic] };
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
      message: `the file asks for YAML ${doc.directives.yaml.version}`,
      help: "a batch file is YAML 1.2: remove the line that begins with %YAML",
      spans: [lines.span(0, 5)],
    });
  return diagnostics.length > 0 ? { diagnostics } : { root: treeOf(doc.contents) };
}
