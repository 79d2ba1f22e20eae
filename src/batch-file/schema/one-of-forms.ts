/**
 * A possible form of a map: the keys that it needs, and those of the keys not shared by all forms that it may have;
 * `keys` is absent if all forms share all keys.
 */
export interface Form {
  readonly needs: readonly string[];
  readonly keys?: readonly string[];
}

/** The forms of a map, for editors; the reader checks them in its own words. */
export type Forms = readonly Form[];

/** Exactly one of some keys. */
export const oneOfKeys = (keys: readonly string[]): { readonly forms: Forms } => ({
  forms: keys.map((key) => ({ needs: [key], keys: [key] })),
});
