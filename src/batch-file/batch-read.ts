import type { Batch } from "../core/model/batch.js";
import type { Diagnostic, Span } from "../diagnostics/diagnostic.js";
import type { Path } from "./source/source.js";
import type { Spec } from "./to-batch/complete.js";

/** What a batch file was read as, and what is wrong with it. */
export interface BatchRead {
  /** Not wanted: nothing of it was looked at but its YAML. */
  readonly unwanted?: boolean;
  /** Absent where a diagnostic is an error. */
  readonly batch?: Batch;
  /** @internal */
  readonly spec?: Spec;
  readonly diagnostics: readonly Diagnostic[];
  /** The place in the input that a path into the batch came from. */
  readonly locate: (path: Path) => Span | undefined;
}
