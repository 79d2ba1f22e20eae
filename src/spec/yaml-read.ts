import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { Lines } from "./lines.js";
import { type YamlNode, yamlTree } from "./yaml-tree.js";

type Read =
  | { readonly root: YamlNode | null; readonly diagnostics?: undefined }
  | { readonly root?: undefined; readonly diagnostics: readonly Diagnostic[] };

/** The tree of a YAML text, or what is wrong with it: a second reader, loaded for it alone, finds the words. */
export async function readYaml(text: string, lines: Lines): Promise<Read> {
  const read = yamlTree(text);
  if ("root" in read) return read;
  const { yamlFaults } = await import("./yaml-faults.js");
  const diagnostics = yamlFaults(text, lines);
  if (diagnostics.length > 0) return { diagnostics };
  return {
    diagnostics: [
      {
        code: "yaml",
        severity: "error",
        message: `not well-formed YAML: ${read.reason}`,
        help: "see the examples for the form",
        spans: [lines.span(read.at, read.at + 1)],
      },
    ],
  };
}
