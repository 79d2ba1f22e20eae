import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Io } from "../io.js";

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  ENOTDIR: "part of its path is a file, not a folder",
  EACCES: "it may not be read",
  EPERM: "it may not be read",
};

/** A file system's refusal to read as a fault of the user's to mend; anything unknown is thrown on. */
export function readFault(path: string, thrown: unknown): Fault {
  const reason = reasons[(thrown as NodeJS.ErrnoException | null)?.code ?? ""];
  if (reason === undefined) throw thrown;
  return error("read", [], `${path} cannot be read: ${reason}`);
}

/** Text of a file, or of stdin for "-"; longer input is cut off after `atMost` bytes. */
export async function readText(path: string, io: Io, atMost?: number): Promise<string> {
  const bytes = path === "-" ? await io.readStdin(atMost) : await io.readFile(path, atMost);
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
}

/** The same for a file that the user names: what a user can cause is a fault, anything else is thrown. */
export async function readNamed(path: string, io: Io, atMost?: number): Promise<Outcome<string>> {
  try {
    return done(await readText(path, io, atMost));
  } catch (thrown) {
    return failed(readFault(path, thrown));
  }
}
