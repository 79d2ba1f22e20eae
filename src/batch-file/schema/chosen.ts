import type * as z from "zod";

/** A union that reads only the form that the value looks like, so that only that form's faults are reported. */
export function chosen<T extends z.ZodUnion>(union: T, formOf: (value: unknown) => number): T {
  const { options } = union._zod.def;
  union._zod.run = (payload, context) => options[formOf(payload.value)]!._zod.run(payload, context);
  return union;
}
