import { type BatchInput, type BatchRead, type Need, readBatch } from "../../spec/read-batch.js";
import { largest } from "../../spec/read-source.js";
import { reflectanceReader } from "../../spec/reflectance.js";
import type { Request } from "../command.js";
import { unplaced } from "../command.js";
import type { Io } from "../io.js";
import { readNamed, readText } from "../read-text.js";

/** One byte more than may be read, so that a file that is too large is seen to be. */
const atMost = largest + 1;

/**
 * Reads the batch that an argument names ("-" for stdin), with its includes and all `--set`. `many`: what is kept
 * and asked where it is one of many; a text that is passed over is not looked at.
 */
export async function readBatchFile(
  name: string,
  { output }: Pick<Request, "output">,
  io: Io,
  needs: readonly Need[] = [],
  many: Pick<BatchInput, "memory" | "wanted"> & { readonly passOver?: (text: string) => boolean } = {},
): Promise<BatchRead> {
  const text = await readNamed(name, io, atMost);
  if (!text.ok) return { diagnostics: text.faults.map(unplaced), locate: () => undefined };
  const { passOver, ...more } = many;
  if (passOver?.(text.value) === true) return { unwanted: true, diagnostics: [], locate: () => undefined };
  const readFile = (file: string): Promise<string> => readText(file, io, atMost);
  return readBatch({
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
