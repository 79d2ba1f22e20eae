import type { CommandDeclaration } from "../../src/cli/command.js";
import type { Io } from "../../src/cli/io.js";
import { run } from "../../src/cli/run.js";

/** What a run did to the outside. */
export interface Outside {
  status: number;
  out: string;
  err: string;
  files: Map<string, string>;
}

/** Runs a command line with nothing real outside; `io` replaces parts of it. */
export async function runFake(
  argv: readonly string[],
  io: Partial<Io> = {},
  commands?: readonly CommandDeclaration[],
): Promise<Outside> {
  const outside: Outside = { status: -1, out: "", err: "", files: new Map() };
  const fake: Io = {
    out: (text) => {
      outside.out += text;
    },
    write: async (text) => {
      outside.out += text;
      return true;
    },
    err: (text) => {
      outside.err += text;
    },
    readStdin: async () => new Uint8Array(),
    readFile: async (path) => {
      throw Object.assign(new Error(`ENOENT: ${path}`), { code: "ENOENT" });
    },
    find: async () => undefined,
    read: async function* (path) {
      yield await (path === "-" ? fake.readStdin() : fake.readFile(path));
    },
    replaceFile: async (path) => {
      let text = "";
      return {
        write: async (more) => {
          text += more;
        },
        commit: async () => void outside.files.set(path, text),
        discard: async () => {},
      };
    },
    appendLines: async (path, { text, tail, lineEnd }) => {
      const before = await fake.readFile(path).then(
        (bytes) => Buffer.from(bytes).toString(),
        () => "",
      );
      outside.files.set(path, `${before}${tail.length > 0 ? lineEnd : ""}${text}`);
      return { setAside: [] };
    },
    createFiles: async (folder, files) => {
      for (const [name, text] of files) outside.files.set(`${folder}/${name}`, text);
      return [];
    },
    env: {},
    cwd: "/anywhere",
    now: () => new Date("2027-04-16T08:00:00Z"),
    outIsTerminal: false,
    errIsTerminal: false,
    columns: undefined,
    ...io,
  };
  outside.status = await run(argv, fake, commands);
  return outside;
}

export const makeUpArgs = ["mix", "--volume", "6L", "--dilution", "1:9", "--temperature", "80C"] as const;
