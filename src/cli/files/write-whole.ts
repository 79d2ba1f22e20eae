import type { Fault } from "../../core/fault.js";
import type { Io, Replacement } from "../io.js";
import { writeFault } from "./write-fault.js";

/** Puts a whole text in place of a file, or says why the file stays as it is. */
export async function writeWhole(
  path: string,
  text: string,
  io: Pick<Io, "replaceFile">,
): Promise<Fault | undefined> {
  let file: Replacement | undefined;
  try {
    file = await io.replaceFile(path);
    await file.write(text);
    await file.commit();
    return undefined;
  } catch (thrown) {
    await file?.discard();
    return writeFault(path, thrown);
  }
}
