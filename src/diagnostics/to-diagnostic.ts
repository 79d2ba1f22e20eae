import type { Fault } from "../core/fault.js";
import type { Diagnostic, Span } from "./diagnostic.js";

/** Finds the place in the input that a path into the batch came from. */
export type Locate = (path: readonly (string | number)[]) => Span | undefined;

/** A fault of the core, with the place in the input that it belongs to. */
export function toDiagnostic(fault: Fault, locate: Locate): Diagnostic {
  // A fault without a path belongs to the command line, not to the first line of the file.
  const span = fault.path.length === 0 ? undefined : locate(fault.path);
  return {
    code: fault.code,
    severity: fault.severity,
    message: fault.message,
    ...(fault.help === undefined ? {} : { help: fault.help }),
    spans: span === undefined ? [] : [span],
  };
}
