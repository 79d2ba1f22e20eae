import { type BatchRead, type Need, type OpenBatch, openBatch } from "../../spec/read-batch.js";
import { largest } from "../../spec/read-source.js";
import type { Request } from "../command.js";
import { unplaced } from "../command.js";
import type { Io } from "../io.js";
import { readNamed, readText } from "../read-text.js";

/** One byte more than may be read, so that a file that is too large is seen to be. */
const atMost = largest + 1;

/** Opens the batch that an argument names ("-" for stdin), with its includes and all `--set`. */
export async function openBatchFile(
  name: string,
  { output }: Pick<Request, "output">,
  io: Io,
  needs: readonly Need[] = [],
): Promise<OpenBatch> {
  const text = await readNamed(name, io, atMost);
  if (!text.ok) {
    const diagnostics = text.faults.map(unplaced);
    return { diagnostics, settle: async () => ({ diagnostics, locate: () => undefined }) };
  }
  const readFile = (file: string): Promise<string> => readText(file, io, atMost);
  return openBatch({ name, text: text.value, readFile, overrides: output.set, needs });
}

/** Reads the same as it stands. */
export const readBatchFile = async (...opened: Parameters<typeof openBatchFile>): Promise<BatchRead> =>
  (await openBatchFile(...opened)).settle();
