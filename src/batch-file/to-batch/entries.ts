/** Things by name. */
export type Entries<T> = { readonly [name: string]: T };

/** Things by name, and the things made from them. */
export interface MadeEntries<From, To> {
  readonly from: Entries<From>;
  readonly to: Entries<To>;
}

/** Makes something from each entry; for an entry that is the same object as before, reuses what was made then. */
export function makeEach<From extends object, To>(
  from: Entries<From>,
  make: (entry: From, name: string) => To,
  before?: MadeEntries<From, To>,
): Entries<To> {
  if (from === before?.from) return before.to;
  const to: Record<string, To> = {};
  for (const name of Object.keys(from)) {
    const entry = from[name]!;
    to[name] = entry === before?.from[name] ? before.to[name]! : make(entry, name);
  }
  return to;
}
