import { coloured, plain } from "../report/paint.js";
import { wantsColour } from "./colour.js";
import type { Complaint, Result } from "./command.js";
import { complaint } from "./command.js";
import type { Io } from "./io.js";
import type { OutputOptions } from "./output-options.js";
import { writeFault } from "./write-fault.js";

/** Says the complaints, writes the report where nothing forbids it, and returns the exit status. */
export async function finish(
  result: Result,
  output: OutputOptions,
  io: Io,
  complain: (complaints: readonly Complaint[]) => void,
): Promise<number> {
  const { complaints, report } = result;
  const errors = complaints.filter(({ severity }) => severity === "error");
  complain(output.quiet ? errors : complaints);
  if (errors.length > 0) return 2;
  if (report !== undefined) {
    const { render } = await import("./render.js");
    const colour =
      output.out === undefined &&
      wantsColour({ env: io.env, isTerminal: io.outIsTerminal, refused: !output.colour });
    const text = await render(report, output, colour ? coloured : plain, io.columns);
    if (output.out === undefined) io.out(text);
    else {
      try {
        await io.writeFileAtomic(output.out, text);
      } catch (thrown) {
        complain([complaint(writeFault(output.out, thrown))]);
        return 2;
      }
    }
  }
  return result.missed === true || (output.strict && complaints.length > 0) ? 1 : 0;
}
