import {
  type BatchInput,
  type BatchRead,
  type Need,
  type OpenBatch,
  openBatch,
} from "../../batch-file/read-batch.js";
import { reflectanceReader } from "../../batch-file/resources/reflectance.js";
import { largest } from "../../batch-file/source/read-source.js";
import type { Request } from "../command.js";
import { unplaced } from "../command.js";
import { readNamed, readText } from "../files/read-text.js";
import type { Io } from "../io.js";

/** One byte more than may be read, so that a file that is too large is seen to be. */
const atMost = largest + 1;

/** What is kept and asked where a batch is one of many; a text that is passed over is not looked at. */
type OneOfMany = Pick<BatchInput, "memory" | "wanted"> & { readonly passOver?: (text: string) => boolean };

/** A batch that is no more than what is told of it. */
const closed = (read: BatchRead): OpenBatch => ({ diagnostics: read.diagnostics, settle: async () => read });

/** Opens the batch that an argument names ("-" for stdin), with its includes and all `--set`. */
export async function openBatchFile(
  name: string,
  { output }: { readonly output: Pick<Request["output"], "set"> },
  io: Io,
  needs: readonly Need[] = [],
  many: OneOfMany = {},
): Promise<OpenBatch> {
  const text = await readNamed(name, io, atMost);
  if (!text.ok) return closed({ diagnostics: text.faults.map(unplaced), locate: () => undefined });
  const { passOver, ...more } = many;
  if (passOver?.(text.value) === true)
    return closed({ unwanted: true, diagnostics: [], locate: () => undefined });
  const readFile = (file: string): Promise<string> => readText(file, io, atMost);
  return openBatch({
    name,
    text: text.value,
    readFile,
    overrides: output.set,
    needs,
    measure: async (file, unit) => (await import("./models.js")).modelsOf(io)(file, unit),
    reflectance: reflectanceReader(readFile),
    ...more,
  });
}

/** Reads the same as it stands. */
export const readBatchFile = async (...opened: Parameters<typeof openBatchFile>): Promise<BatchRead> =>
  (await openBatchFile(...opened)).settle();
