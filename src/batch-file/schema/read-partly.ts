import * as z from "zod";
import type { Partly } from "../checks/report.js";

/**
 * What a schema reads of some data, with every value that is at fault undefined, and the issues. Zod's own parsers
 * keep what was read only where there is no issue.
 */
export function readPartly<T extends z.ZodType>(
  schema: T,
  data: unknown,
): { readonly value: Partly<z.output<T>>; readonly issues: readonly z.core.$ZodIssue[] } {
  // Compiling the schema takes longer than one batch.
  const context = { async: false, jitless: true } as const;
  const read = schema._zod.run({ value: data, issues: [] }, context);
  if (read instanceof Promise) throw new z.core.$ZodAsyncError();
  const issues = read.issues.map((issue) => z.core.util.finalizeIssue(issue, context, z.core.config()));
  return { value: read.value as Partly<z.output<T>>, issues };
}
