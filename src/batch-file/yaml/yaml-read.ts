import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Lines } from "../source/lines.js";
import { type YamlNode, yamlTree } from "./yaml-tree.js";

type Read =
  | { readonly root: YamlNode | null; readonly diagnostics?: undefined }
  | { readonly root?: undefined; readonly diagnostics: readonly Diagnostic[] };

/**
 * The tree of a YAML text, or what is wrong with it. js-yaml reads it; a text that it refuses is read again by the yaml
 * package, loaded for that alone: it finds the words and the place, or reads what the other is too strict for (a tab
 * between brackets). Where the two read a text, they give the same tree.
 */
export async function readYaml(text: string, lines: Lines): Promise<Read> {
  const read = yamlTree(text);
  if (read !== undefined) return read;
  const { composeYaml } = await import("./yaml-compose.js");
  return composeYaml(text, lines);
}
