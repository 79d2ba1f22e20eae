/** A figure that was not given and was taken from a published or usual range. */
export interface Assumption {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
  /** How much of the cost of the batch rests on it, over 0 to 1; absent where none does. */
  readonly costShare?: number;
  /** How to find a figure of your own, where the message does not say it. */
  readonly help?: string;
}

export const assumption = (
  code: string,
  path: Assumption["path"],
  message: string,
  more: Pick<Assumption, "costShare" | "help"> = {},
): Assumption => ({ code, path, message, ...more });
