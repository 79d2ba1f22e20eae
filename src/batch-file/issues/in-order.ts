import { mapped } from "../../core/mapped.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";

/** Sorts by place: the main file first, then the others in order of appearance; then by line and column. */
export function inOrder(diagnostics: readonly Diagnostic[], main: string): Diagnostic[] {
  const files = [
    ...new Set([main, ...diagnostics.flatMap((d) => mapped(d.spans.slice(0, 1), (s) => s.file))]),
  ];
  const key = (d: Diagnostic): readonly number[] => {
    const span = d.spans[0];
    return span === undefined ? [-1, 0, 0] : [files.indexOf(span.file), span.line, span.column];
  };
  const seen = new Set<string>();
  return mapped(
    mapped(diagnostics, (d) => ({ d, k: key(d) })).sort(
      (a, b) => a.k[0]! - b.k[0]! || a.k[1]! - b.k[1]! || a.k[2]! - b.k[2]!,
    ),
    ({ d }) => d,
  ).filter((d) => {
    const same = JSON.stringify([
      d.code,
      d.message,
      d.spans[0]?.file,
      d.spans[0]?.line,
      d.spans[0]?.column,
      d.spans[0]?.text.slice(0, 1000),
    ]);
    return !seen.has(same) && seen.add(same) !== undefined;
  });
}
