import { dirname, isAbsolute, join, normalize } from "pathe";
import { mapped } from "../../core/mapped.js";
import type { Diagnostic, Span } from "../../diagnostics/diagnostic.js";
import { asMerged, type Merged, merge } from "./merge.js";
import { readSource } from "./read-source.js";
import type { Source } from "./source.js";

/** Text of a file; rejects, or throws, where it cannot be read. */
export type ReadFile = (name: string) => string | Promise<string>;

/** The name of a file that is written in another file, as seen from where the command runs. */
export const besides = (file: string, name: string): string =>
  isAbsolute(name) ? normalize(name) : join(dirname(file), name);

interface Gathered {
  readonly merged?: Merged;
  /** Whether every file that is included could be read: names may be missing where not. */
  readonly whole: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

/** Names of the files that a source includes, with the place of each; wrong forms are reported. */
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

/** What came of an included file: its data, or why it could not be read. */
type Included = { readonly missing: unknown } | Awaited<ReturnType<typeof readSource>>;

/**
 * What one run keeps of included files, so that many batches that share them read and join them once. Their data
 * are the same objects in every batch.
 */
export interface IncludeMemory {
  readonly files: Map<string, Included>;
  readonly joined: Map<string, { readonly merged: Merged; readonly diagnostics: readonly Diagnostic[] }>;
}
export const includeMemory = (): IncludeMemory => ({ files: new Map(), joined: new Map() });

/** Joins of included files that are kept; a workshop has a handful. */
const mostJoined = 100;

async function included(file: string, readFile: ReadFile, { files }: IncludeMemory): Promise<Included> {
  const known = files.get(file);
  if (known !== undefined) return known;
  let read: Included;
  try {
    read = await readSource(file, await readFile(file));
  } catch (missing) {
    read = { missing };
  }
  files.set(file, read);
  return read;
}

/** Joins sources in their order; joins of included files are kept. */
function joinAll(sources: readonly Source[], { joined }: IncludeMemory, diagnostics: Diagnostic[]): Merged {
  const last = sources.at(-1)!;
  if (sources.length === 1) return asMerged(last);
  const before = sources.slice(0, -1);
  const key = JSON.stringify(mapped(before, ({ name }) => name));
  let first = joined.get(key);
  if (first === undefined) {
    const found: Diagnostic[] = [];
    first = { merged: joinAll(before, { files: new Map(), joined: new Map() }, found), diagnostics: found };
    joined.set(key, first);
    if (joined.size > mostJoined) joined.delete(joined.keys().next().value!);
  }
  const whole = merge(first.merged, asMerged(last));
  diagnostics.push(...first.diagnostics, ...whole.diagnostics);
  return whole.merged;
}

/**
 * Reads a file with all it includes, each once however often it is named; the parts of included files come
 * in the order of the include lists, then those of the file itself.
 */
export async function gather(
  name: string,
  text: string,
  readFile: ReadFile,
  memory: IncludeMemory = includeMemory(),
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
      const read = await included(file, readFile, memory);
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
      diagnostics.push(...read.diagnostics);
      if (read.source === undefined) failed = true;
      else await take(read.source, [...chain, file]);
    }
    sources.push(source);
  }

  const main = await readSource(name, text);
  diagnostics.push(...main.diagnostics);
  if (main.source === undefined) return { whole: false, diagnostics };
  const own = name === "-" ? name : normalize(name);
  seen.add(own);
  await take(main.source, [own]);
  return { merged: joinAll(sources, memory, diagnostics), whole: !failed, diagnostics };
}
