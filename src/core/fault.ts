/**
 * Something that a user can cause and must be told: a value, never an exception.
 * `path` leads into the batch (`["tanks", "six", "heater"]`) or is empty; whoever read the input knows
 * the file, line and column that belong to it. `code` is stable and may be scripted against.
 */
export interface Fault {
  readonly code: string;
  readonly severity: "error" | "warning";
  readonly path: readonly (string | number)[];
  readonly message: string;
  /** What to write or do instead. */
  readonly help?: string;
}

/** Whether a fault prevents a result. */
export const isError = ({ severity }: Pick<Fault, "severity">): boolean => severity === "error";

/** A value, or the faults that prevent it; warnings may come with a value. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly faults: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A value with the warnings that go with it. */
export const done = <T>(value: T, faults: readonly Fault[] = []): Outcome<T> => ({ ok: true, value, faults });

/** No value, and why. */
export const failed = (...faults: readonly Fault[]): Outcome<never> => ({ ok: false, faults });

/** An error at a place in the batch. */
export const error = (
  code: string,
  path: readonly (string | number)[],
  message: string,
  help?: string,
): Fault => ({ code, severity: "error", path, message, ...(help === undefined ? {} : { help }) });

/** A warning at a place in the batch. */
export const warning = (
  code: string,
  path: readonly (string | number)[],
  message: string,
  help?: string,
): Fault => ({ code, severity: "warning", path, message, ...(help === undefined ? {} : { help }) });
