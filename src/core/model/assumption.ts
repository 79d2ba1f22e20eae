/** A figure that was not given and was taken from a published or usual range. */
export interface Assumption {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
}
