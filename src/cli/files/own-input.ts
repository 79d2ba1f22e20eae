import { resolve } from "node:path";
import { error, type Fault } from "../../core/fault.js";
import type { Request } from "../command.js";
import type { Io, Thread } from "../io.js";

/** An Io that remembers which files were read through it, by its threads too. */
export function watched(io: Io): { readonly io: Io; readonly reads: Set<string> } {
  const reads = new Set<string>();
  const note = (path: string): string => {
    reads.add(resolve(io.cwd, path));
    return path;
  };
  const { threads } = io;
  const noting = (thread: Thread): Thread => ({
    ...thread,
    ask: async (question) => {
      const answer = await thread.ask(question);
      answer.reads.forEach(note);
      return answer;
    },
  });
  return {
    reads,
    io: {
      ...io,
      readFile: (path, atMost) => io.readFile(note(path), atMost),
      read: (path) => io.read(note(path)),
      ...(threads && { threads: async (...asked) => (await threads(...asked)).map(noting) }),
    },
  };
}

/** The fault of writing a result over a file that it is made from: one named on the command line, or read since. */
export function ownInput(request: Request, io: Io, reads: ReadonlySet<string>): Fault | undefined {
  const { out } = request.output;
  if (out === undefined) return undefined;
  const target = resolve(io.cwd, out);
  const named = [...request.args, ...Object.values(request.options).flat()]
    .filter((value) => typeof value === "string" && value !== "-" && value !== out)
    .map((value) => resolve(io.cwd, value as string));
  // A link in the way leads to the same file by another name.
  const real = io.realPath?.(target);
  const isTarget = (path: string): boolean =>
    path === target || (real !== undefined && io.realPath?.(path) === real);
  const given = request.args.includes(out) || named.some(isTarget) || [...reads].some(isTarget);
  return given
    ? error(
        "usage",
        ["--out"],
        `"${out}" is read to make this result: it would be written over`,
        "name another file",
      )
    : undefined;
}
