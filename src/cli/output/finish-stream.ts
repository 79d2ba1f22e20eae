import { type Fault, isError } from "../../core/fault.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import type { Ending, Stream } from "../command.js";
import { writeFault } from "../files/write-fault.js";
import type { Io, Replacement } from "../io.js";
import type { OutputOptions } from "./output-options.js";
import { say, turnDown } from "./say.js";

const shown = (diagnostics: readonly Diagnostic[], { quiet }: OutputOptions): readonly Diagnostic[] =>
  quiet ? diagnostics.filter(isError) : diagnostics;

/** Passes pieces on until the end, or undefined where nobody reads on. */
async function pass(
  stream: Stream,
  write: (text: string) => Promise<boolean>,
  output: OutputOptions,
  io: Io,
): Promise<Ending | undefined> {
  for (;;) {
    const { done, value } = await stream.next();
    if (done) return value;
    if (typeof value !== "string") await say(shown(value, output), io, !output.colour);
    else if (value !== "" && !(await write(value))) return undefined;
  }
}

async function toFile(
  path: string,
  stream: Stream,
  output: OutputOptions,
  io: Io,
  forbids: () => Fault | undefined,
): Promise<Ending | undefined> {
  let file: Replacement | undefined;
  /** A failure to write is the file's, one to read on is ours. */
  let own = true;
  try {
    file = await io.replaceFile(path);
    const { write, commit } = file;
    own = false;
    const ending = await pass(
      stream,
      async (text) => {
        own = true;
        await write(text);
        own = false;
        return true;
      },
      output,
      io,
    );
    if (ending?.spoilt === true) return ending;
    // What was read is known only now.
    const fault = forbids();
    if (fault !== undefined) {
      await turnDown([fault], io, !output.colour);
      return { diagnostics: [], status: 2 };
    }
    own = true;
    await commit();
    file = undefined;
    return ending;
  } catch (thrown) {
    if (!own) throw thrown;
    await turnDown([writeFault(path, thrown)], io, !output.colour);
    return { diagnostics: [], status: 2 };
  } finally {
    await file?.discard();
  }
}

/** Writes a result as it comes and returns the exit status; a reader who leaves ends it quietly. */
export async function finishStream(
  stream: Stream,
  output: OutputOptions,
  io: Io,
  forbids: () => Fault | undefined,
): Promise<number> {
  let ending: Ending | undefined;
  try {
    ending =
      output.out === undefined
        ? await pass(stream, io.write, output, io)
        : await toFile(output.out, stream, output, io, forbids);
  } finally {
    // Closes the input where the result broke off.
    await stream.return({ diagnostics: [] }).catch(() => undefined);
  }
  if (ending === undefined) return 0;
  const { diagnostics, status, missed, note } = ending;
  await say(shown(diagnostics, output), io, !output.colour);
  if (note !== undefined && !output.quiet) io.err(`${note}\n`);
  if (status !== undefined || hasErrors(diagnostics)) return 2;
  return missed === true || (output.strict && diagnostics.length > 0) ? 1 : 0;
}
