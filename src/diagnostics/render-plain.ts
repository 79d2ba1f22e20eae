import type { Diagnostic } from "./diagnostic.js";
import { visible } from "./visible.js";

/** Sentences only, for a screen reader: no marks, no columns to line up, one diagnostic a paragraph. */
export function renderPlain(diagnostics: readonly Diagnostic[]): string {
  const sentences = diagnostics.map((d) => {
    const [first, ...others] = d.spans;
    const at = first === undefined ? "" : ` in ${first.file}, line ${first.line}, column ${first.column}`;
    const kind = d.severity === "error" ? "Error" : "Warning";
    const found =
      first === undefined
        ? ""
        : ` At fault: ${first.text.slice(first.column - 1, first.column - 1 + first.length).trim()}.`;
    const more = others.map(
      (span) =>
        ` See also ${span.file}, line ${span.line}${span.label === undefined ? "" : `: ${span.label}`}.`,
    );
    const help = d.help === undefined ? "" : ` Help: ${d.help}.`;
    return visible(`${kind}${at}: ${d.message}.${found}${more.join("")}${help} Code: ${d.code}.`);
  });
  return sentences.length === 0 ? "" : `${sentences.join("\n")}\n`;
}
