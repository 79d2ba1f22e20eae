import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Lines } from "../source/lines.js";
import { type YamlNode, yamlTree } from "./yaml-tree.js";

type Read =
  | { readonly root: YamlNode | null; readonly diagnostics?: undefined }
  | { readonly root?: undefined; readonly diagnostics: readonly Diagnostic[] };

/**
 * The tree of a YAML text, or its faults. js-yaml reads it. Only if js-yaml refuses the text, the yaml package is loaded
 * and reads it again: it finds the faults and their places, or accepts what js-yaml is too strict for (a tab between
 * brackets). Both give the same tree for a text that both accept.
 */
export async function readYaml(text: string, lines: Lines): Promise<Read> {
  const read = yamlTree(text);
  if (read !== undefined) return read;
  const { composeYaml } = await import("./yaml-compose.js");
  return composeYaml(text, lines);
}
