import type { BatchRead } from "../../batch-file/batch-read.js";
import type { BatchText } from "../../batch-file/batch-text.js";
import { reflectanceReader } from "../../batch-file/resources/reflectance.js";
import { largest } from "../../batch-file/source/read-source.js";
import { type OpenBatch, Workshop } from "../../batch-file/workshop.js";
import type { Request } from "../command.js";
import { unplaced } from "../command.js";
import { readNamed, readText } from "../files/read-text.js";
import type { Io } from "../io.js";

/** One byte more than may be read, so that a file that is too large is seen to be. */
const atMost = largest + 1;

/** A workshop whose files are read through an Io. */
export function workshopOf(io: Io): Workshop {
  const readFile = (file: string): Promise<string> => readText(file, io, atMost);
  return new Workshop({
    readFile,
    measure: async (file, unit) => {
      const { largestModel, modelReader } = await import("../../batch-file/resources/model-reader.js");
      return modelReader((model) => io.readFile(model, largestModel + 1))(file, unit);
    },
    reflectance: reflectanceReader(readFile),
  });
}

/** What is asked of a batch; a text that is passed over is not looked at. */
type Asked = Pick<BatchText, "needs" | "wanted" | "log" | "startsMatter" | "asDayBegan"> & {
  /** Where the batch is one of many. */
  readonly workshop?: Workshop;
  readonly passOver?: (text: string) => boolean;
};

/** A batch of which only the diagnostics are left. */
const closed = (read: BatchRead): OpenBatch => ({ diagnostics: read.diagnostics, settle: async () => read });

/** Opens the batch that an argument names ("-" for stdin), with its includes and all `--set`. */
export async function openBatchFile(
  name: string,
  { output }: { readonly output: Pick<Request["output"], "set"> },
  io: Io,
  { workshop = workshopOf(io), passOver, ...asked }: Asked = {},
): Promise<OpenBatch> {
  const text = await readNamed(name, io, atMost);
  if (!text.ok) return closed({ diagnostics: text.faults.map(unplaced), locate: () => undefined });
  if (passOver?.(text.value) === true)
    return closed({ unwanted: true, diagnostics: [], locate: () => undefined });
  return workshop.open({ name, text: text.value, overrides: output.set, ...asked });
}

/** Reads the same, unchanged. */
export const readBatchFile = async (...opened: Parameters<typeof openBatchFile>): Promise<BatchRead> =>
  (await openBatchFile(...opened)).settle();
