import { dirname, isAbsolute, join, normalize } from "pathe";
import { append } from "../../core/append.js";
import { madeOnce } from "../../core/made-once.js";
import { mapped } from "../../core/mapped.js";
import type { Diagnostic, Span } from "../../diagnostics/diagnostic.js";
import { asMerged, type Merged, merge } from "./merge.js";
import { readSource } from "./read-source.js";
import type { Source } from "./source.js";

/** Returns the text of a file; rejects or throws if it cannot read the file. */
export type ReadFile = (name: string) => string | Promise<string>;

/** Resolves a file name written in another file against that file. */
export const besides = (file: string, name: string): string =>
  isAbsolute(name) ? normalize(name) : join(dirname(file), name);

interface Gathered {
  readonly merged?: Merged;
  /** The included files by name, in their order; absent if there are none. */
  readonly included?: string;
  /** Whether every included file could be read; if not, names may be missing. */
  readonly whole: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

/** Names of the files that a source includes, with their indices; reports wrong forms. */
function includesOf(
  source: Source,
  diagnostics: Diagnostic[],
): { name: string; index: number | undefined }[] {
  const given = (source.plain as Record<string, unknown>).include;
  if (given === undefined) return [];
  const listOf = Array.isArray(given) ? given : [given];
  return listOf.flatMap((name: unknown, i) => {
    const index = Array.isArray(given) ? i : undefined;
    if (typeof name === "string" && name.trim() !== "") return [{ name, index }];
    diagnostics.push({
      code: "include-form",
      severity: "error",
      message: "include takes names of files",
      help: "write include: [workshop.yaml, dyes.yaml]",
      spans: [source.locate(index === undefined ? ["include"] : ["include", index], "value")],
    });
    return [];
  });
}

/** Why a file cannot be read, in words. */
export const because = (cause: unknown): string => {
  const code = (cause as { code?: unknown } | undefined)?.code;
  if (code === "ENOENT") return "there is no such file";
  if (code === "EISDIR") return "it is a folder";
  if (code === "EACCES" || code === "EPERM") return "it may not be read";
  return "it cannot be read";
};

/** An included file, or the error of reading it. */
type Included = { readonly missing: unknown } | Awaited<ReturnType<typeof readSource>>;

/** Most files, and lists of files, to cache; a workshop has a handful. */
const mostFiles = 256;

/** Cache of included files: each is read once, and each list of files is joined once. */
export class IncludedFiles {
  private readonly files = new Map<string, Promise<Included>>();
  private readonly joined = new Map<
    string,
    { readonly merged: Merged; readonly diagnostics: readonly Diagnostic[] }
  >();

  read(file: string, readFile: ReadFile): Promise<Included> {
    return madeOnce(this.files, file, mostFiles, async () => {
      let text: string;
      try {
        text = await readFile(file);
      } catch (missing) {
        return { missing };
      }
      return readSource(file, text);
    });
  }

  /** Sources joined in their order; `list` names them. */
  join(list: string, sources: readonly Source[]) {
    return madeOnce(this.joined, list, mostFiles, () => {
      const diagnostics: Diagnostic[] = [];
      const merged = sources.map(asMerged).reduce((first, second) => {
        const both = merge(first, second);
        append(diagnostics, both.diagnostics);
        return both.merged;
      });
      return { merged, diagnostics };
    });
  }
}

/**
 * Reads a file with its includes, each file once however often it is named. Included files come first, in the order of
 * the include lists; the file itself comes last.
 */
export async function gather(
  name: string,
  text: string,
  readFile: ReadFile,
  files: IncludedFiles,
): Promise<Gathered> {
  const diagnostics: Diagnostic[] = [];
  const seen = new Set<string>();
  let failed = false;
  const sources: Source[] = [];

  async function take(source: Source, chain: readonly string[]): Promise<void> {
    for (const { name: written, index } of includesOf(source, diagnostics)) {
      const span = (): Span => source.locate(index === undefined ? ["include"] : ["include", index], "value");
      const file = besides(source.name, written);
      const round = chain.indexOf(file);
      if (round >= 0) {
        diagnostics.push({
          code: "include-cycle",
          severity: "error",
          message: `the files include each other in a circle: ${[...chain.slice(round), file].join(" -> ")}`,
          help: "remove one of these includes",
          spans: [span()],
        });
        continue;
      }
      if (seen.has(file)) continue;
      seen.add(file);
      const read = await files.read(file, readFile);
      if ("missing" in read) {
        failed = true;
        diagnostics.push({
          code: "include-missing",
          severity: "error",
          message: `${file} cannot be included: ${because(read.missing)}`,
          help: "the name is relative to the file that includes it",
          spans: [span()],
        });
        continue;
      }
      append(diagnostics, read.diagnostics);
      if (read.source === undefined) failed = true;
      else await take(read.source, [...chain, file]);
    }
    sources.push(source);
  }

  const main = await readSource(name, text);
  append(diagnostics, main.diagnostics);
  if (main.source === undefined) return { whole: false, diagnostics };
  const own = name === "-" ? name : normalize(name);
  seen.add(own);
  await take(main.source, [own]);
  const last = asMerged(sources.pop()!);
  if (sources.length === 0) return { merged: last, whole: !failed, diagnostics };
  const included = JSON.stringify(mapped(sources, (source) => source.name));
  const first = files.join(included, sources);
  const all = merge(first.merged, last);
  append(diagnostics, first.diagnostics);
  append(diagnostics, all.diagnostics);
  return { merged: all.merged, included, whole: !failed, diagnostics };
}
