import type { Fault } from "../core/fault.js";
import { type Diagnostic, hasErrors } from "../diagnostics/diagnostic.js";
import { type Result, unplaced } from "./command.js";
import type { Io } from "./io.js";
import type { OutputOptions } from "./output-options.js";
import { paintFor } from "./paint-for.js";
import { wantsColour } from "./wants-colour.js";
import { writeFault } from "./write-fault.js";

/** Says diagnostics on stderr, laid out for the terminal it is; those about no file stand close, uncounted. */
export async function say(diagnostics: readonly Diagnostic[], io: Io, refusedColour: boolean): Promise<void> {
  if (diagnostics.length === 0) return;
  const { renderDiagnostic, renderText } = await import("../diagnostics/render-text.js");
  const colour = wantsColour({ env: io.env, isTerminal: io.errIsTerminal, refused: refusedColour });
  const layout = { columns: Math.min(io.columns ?? 80, 100), colour };
  io.err(
    diagnostics.every(({ spans }) => spans.length === 0)
      ? `${diagnostics.map((diagnostic) => renderDiagnostic(diagnostic, layout)).join("\n")}\n`
      : renderText(diagnostics, layout),
  );
}

/** Says faults of the command line and returns their exit status. */
export async function turnDown(faults: readonly Fault[], io: Io, refusedColour: boolean): Promise<number> {
  await say(faults.map(unplaced), io, refusedColour);
  return 2;
}

/** Says the diagnostics, writes the report where nothing forbids it, and returns the exit status. */
export async function finish(result: Result, output: OutputOptions, io: Io): Promise<number> {
  if (result.stream !== undefined)
    return (await import("./finish-stream.js")).finishStream(result.stream, output, io);
  const { diagnostics, report } = result;
  const shown = output.quiet ? diagnostics.filter(({ severity }) => severity === "error") : diagnostics;
  await say(shown, io, !output.colour);
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
