/** Things by name. */
export type Entries<T> = { readonly [name: string]: T };

/** Things by name, and what was made of them. */
export interface MadeEntries<From, To> {
  readonly from: Entries<From>;
  readonly to: Entries<To>;
}

/** What is made of each entry; of an entry that is the very same as before, it is what was made of it then. */
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
