import { normalize } from "node:path";
import { error, type Fault } from "../../core/fault.js";
import type { Io } from "../io.js";

/** A file that may hold a batch. `named`: typed as it is, so it must. */
export interface BatchFile {
  readonly name: string;
  readonly named: boolean;
}

/**
 * Files that the arguments name, each once: those named as they were typed, then those found in folders and
 * by patterns, sorted by code unit.
 */
export async function batchFiles(
  names: readonly string[],
  io: Pick<Io, "find">,
): Promise<{ readonly files: readonly BatchFile[]; readonly faults: readonly Fault[] }> {
  const files = new Map<string, BatchFile>();
  const found: string[] = [];
  const faults: Fault[] = [];
  for (const name of names) {
    const some = name === "-" ? undefined : await io.find(name);
    if (some === undefined) files.set(name === "-" ? name : normalize(name), { name, named: true });
    else if (some.length === 0)
      faults.push(
        error(
          "no-files",
          [],
          `${name} holds no .yaml, .yml or .json file, or matches none`,
          "check the path",
        ),
      );
    else for (const one of some) found.push(one);
  }
  for (const name of found.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0)))
    if (!files.has(normalize(name))) files.set(normalize(name), { name, named: false });
  return { files: [...files.values()], faults };
}

type Data = Readonly<Record<string, unknown>>;

/**
 * Whether a file that was found is a batch: it has a name, or baths and orders but forgot the name. Others are
 * files that batches include, reports of ours, or something else.
 */
export const holdsBatch = (data: Data): boolean =>
  !String(data.schema ?? "").startsWith("dipwright/") &&
  ("batch" in data || ("baths" in data && "orders" in data));
