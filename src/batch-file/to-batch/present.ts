/** An object without its undefined keys: optional keys of the model must be absent, not undefined. */
type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};
export const present = <T extends object>(object: T): Present<T> => {
  const kept: Partial<T> = {};
  for (const key in object) if (object[key] !== undefined) kept[key] = object[key];
  return kept as unknown as Present<T>;
};
