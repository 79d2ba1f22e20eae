import { error, type Fault } from "../../core/fault.js";

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such folder",
  ENOTDIR: "a part of its path is a file, not a folder",
  EISDIR: "it is a folder",
  EACCES: "it may not be written",
  EPERM: "it may not be written",
  EROFS: "the disk may not be written",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk is full",
  EFBIG: "it is larger than files may be here",
  ELOOP: "its links lead in a circle",
  EEXIST: "it is already there",
  ENAMETOOLONG: "the name is too long",
  EIO: "the disk fails",
};

/** A file system's refusal to write as a fault of the user's to mend; anything unknown is thrown on. */
export function writeFault(path: string, thrown: unknown): Fault {
  const code = (thrown as NodeJS.ErrnoException | null)?.code;
  const reason = code === undefined ? undefined : reasons[code];
  if (reason === undefined) throw thrown;
  return error("write", [], `${path} was not written: ${reason}`);
}
