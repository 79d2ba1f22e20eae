import { type Fault, isError } from "../../core/fault.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import { formats } from "../../report/format/formats.js";
import type { Result } from "../command.js";
import { writeWhole } from "../files/write-whole.js";
import type { Io } from "../io.js";
import type { OutputOptions } from "./output-options.js";
import { paintFor } from "./paint-for.js";
import { render } from "./render.js";
import { say, turnDown } from "./say.js";
import { terminalColumns } from "./terminal-columns.js";

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
  const { forPeople } = formats[output.format];
  const shown = diagnostics.filter(
    (one) => isError(one) || !(output.quiet || (forPeople && one.inReport === true && report !== undefined)),
  );
  await say(shown, io, !output.colour);
  if (result.note !== undefined && !output.quiet) io.err(`${result.note}\n`);
  if (hasErrors(diagnostics) && result.status === undefined) return 2;
  if (report !== undefined) {
    const layout = { csv: output.csv, columns: terminalColumns(io.columns), paint: paintFor(output, io) };
    const text = await render(report, output, layout);
    if (!text.ok) return turnDown(text.faults, io, !output.colour);
    if (output.out === undefined) io.out(text.value);
    else {
      const fault = await writeWhole(output.out, text.value, io);
      if (fault !== undefined) return turnDown([fault], io, !output.colour);
    }
  }
  if (result.status !== undefined) return result.status;
  return result.missed === true || (output.strict && diagnostics.length > 0) ? 1 : 0;
}
