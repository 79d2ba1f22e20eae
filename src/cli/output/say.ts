import type { Fault } from "../../core/fault.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { visible } from "../../diagnostics/visible.js";
import { unplaced } from "../command.js";
import type { Io } from "../io.js";
import { terminalColumns } from "./terminal-columns.js";
import { wantsColour } from "./wants-colour.js";

/** Prints diagnostics on stderr, laid out for its terminal; those without a file are not counted. */
export async function say(diagnostics: readonly Diagnostic[], io: Io, refusedColour: boolean): Promise<void> {
  if (diagnostics.length === 0) return;
  const { renderDiagnostic, renderText } = await import("../../diagnostics/render-text.js");
  const colour = wantsColour({ env: io.env, isTerminal: io.errIsTerminal, refused: refusedColour });
  const layout = { columns: Math.min(terminalColumns(io.columns), 100), colour };
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

/** Says one line on stderr that may hold text of the user's. */
export const sayLine = (line: string, io: Pick<Io, "err">): void => io.err(`${visible(line)}\n`);
