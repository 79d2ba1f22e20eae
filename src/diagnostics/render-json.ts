import type { Diagnostic } from "./diagnostic.js";

/** For programs: a list of diagnostics with every field, under a versioned name. */
export const renderJson = (diagnostics: readonly Diagnostic[]): string =>
  `${JSON.stringify({ schema: "dipwright/diagnostics@1", diagnostics }, null, 2)}\n`;
