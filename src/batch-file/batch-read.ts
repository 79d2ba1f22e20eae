import type { Batch } from "../core/model/batch.js";
import type { Diagnostic, Span } from "../diagnostics/diagnostic.js";
import type { Path } from "./source/source.js";
import type { Spec } from "./to-batch/complete.js";

/** The batch read from a file, and the faults of the file. */
export interface BatchRead {
  /** Skipped by `wanted`: only its YAML was read. */
  readonly unwanted?: boolean;
  /** Absent if a diagnostic is an error. */
  readonly batch?: Batch;
  /** @internal */
  readonly spec?: Spec;
  readonly diagnostics: readonly Diagnostic[];
  /** The place in the input that a path into the batch came from. */
  readonly locate: (path: Path) => Span | undefined;
}
