import type * as z from "zod";

/**
 * A schema that checks one and the same map once: what came of it is given again where the map comes again, as
 * that of an included file does in every batch. Only maps without a fault are kept, and neither they nor what is
 * made of them may be changed.
 */
export function remembered<T extends z.ZodType>(schema: T): T {
  const known = new WeakMap<object, unknown>();
  const { run } = schema._zod;
  schema._zod.run = (payload, context) => {
    const given = payload.value;
    if (typeof given !== "object" || given === null) return run(payload, context);
    if (known.has(given)) {
      payload.value = known.get(given);
      return payload;
    }
    const before = payload.issues.length;
    const result = run(payload, context);
    if (!(result instanceof Promise) && result.issues.length === before) known.set(given, result.value);
    return result;
  };
  return schema;
}
