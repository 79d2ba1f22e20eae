/**
 * A form that a map can take: keys that it needs, and those that it may have among the ones that not every form has;
 * absent where every form has every key.
 */
export interface Form {
  readonly needs: readonly string[];
  readonly keys?: readonly string[];
}

/** The forms of a map, for editors; the reader checks them in its own words. */
export type Forms = readonly Form[];

/** One of some keys, and never two of them. */
export const oneOfKeys = (keys: readonly string[]): { readonly forms: Forms } => ({
  forms: keys.map((key) => ({ needs: [key], keys: [key] })),
});
