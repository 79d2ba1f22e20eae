import { type Fault, isError } from "../../core/fault.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import type { Result } from "../command.js";
import { writeFault } from "../files/write-fault.js";
import type { Io } from "../io.js";
import type { OutputOptions } from "./output-options.js";
import { paintFor } from "./paint-for.js";
import { say, turnDown } from "./say.js";

/**
 * Says the diagnostics, writes the report where nothing forbids it, and returns the exit status. `forbids` tells why
 * the file asked for must not be replaced, as far as is known by then.
 */
export async function finish(
  result: Result,
  output: OutputOptions,
  io: Io,
  forbids: () => Fault | undefined,
): Promise<number> {
  if (result.stream !== undefined)
    return (await import("./finish-stream.js")).finishStream(result.stream, output, io, forbids);
  const { diagnostics, report } = result;
  const shown = output.quiet ? diagnostics.filter(isError) : diagnostics;
  await say(shown, io, !output.colour);
  if (result.note !== undefined && !output.quiet) io.err(`${result.note}\n`);
  if (hasErrors(diagnostics) && result.status === undefined) return 2;
  if (report !== undefined) {
    const { render } = await import("./render.js");
    const text = await render(report, output, paintFor(output, io), io.columns);
    if (output.out === undefined) io.out(text);
    else {
      try {
        await io.writeFileAtomic(output.out, text);
      } catch (thrown) {
        return turnDown([writeFault(output.out, thrown)], io, !output.colour);
      }
    }
  }
  if (result.status !== undefined) return result.status;
  return result.missed === true || (output.strict && diagnostics.length > 0) ? 1 : 0;
}
