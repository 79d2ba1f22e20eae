import { wrapAnsi } from "fast-wrap-ansi";
import { isError } from "../core/fault.js";
import { counted } from "../core/quantity/text/counted.js";
import type { Diagnostic, Span } from "./diagnostic.js";
import { excerpt } from "./excerpt.js";
import { visible } from "./visible.js";

export interface TextOptions {
  /** Width of the terminal [columns]; 80 where absent. */
  readonly columns?: number;
  readonly colour?: boolean;
}

const paint = (on: boolean, code: number, text: string): string =>
  on ? `\u001b[${code}m${text}\u001b[0m` : text;

/** A paragraph whose further lines are indented under its first word. */
function paragraph(head: string, text: string, columns: number): string {
  const width = Math.max(20, columns - head.length);
  // A number stays with the unit behind it.
  const joined = visible(text).replace(/(\d|\bUS) (?=[°%\p{L}/])/gu, "$1\u00a0");
  const lines = wrapAnsi(joined, width, { trim: true, hard: true }).replaceAll("\u00a0", " ").split("\n");
  return lines.map((line, i) => `${i === 0 ? head : " ".repeat(head.length)}${line}`).join("\n");
}

const place = (span: Span): string => `${visible(span.file)}:${span.line}:${span.column}`;

function source(span: Span, columns: number, colour: boolean, mark: number): string {
  const number = String(span.line);
  const gutter = `${" ".repeat(Math.max(0, 4 - number.length))}${number} | `;
  const { line, marks } = excerpt(span, Math.max(20, columns - gutter.length));
  const blank = `${" ".repeat(gutter.length - 2)}| `;
  return `${gutter}${line}\n${blank}${marks.replace(/\^+/, (carets) => paint(colour, mark, carets))}`.replace(
    / +$/gm,
    "",
  );
}

/** One diagnostic for a terminal: where, what, the line with the fault marked, and what to write instead. */
export function renderDiagnostic(diagnostic: Diagnostic, options: TextOptions = {}): string {
  const columns = diagnostic.oneLine ? Number.MAX_SAFE_INTEGER : Math.max(40, options.columns ?? 80);
  const colour = options.colour ?? false;
  const mark = diagnostic.severity === "error" ? 31 : 33;
  const [first, ...others] = diagnostic.spans;
  const title = `${diagnostic.severity}[${diagnostic.code}]`;
  const parts = [
    ...(first === undefined ? [] : [paint(colour, 1, place(first))]),
    paragraph(`${title}: `, diagnostic.message, columns).replace(title, paint(colour, mark, title)),
    ...(first === undefined ? [] : [source(first, columns, colour, mark)]),
    ...others.flatMap((span) => [
      `  ${place(span)}${span.label === undefined ? "" : `: ${visible(span.label)}`}`,
      source(span, columns, colour, 36),
    ]),
    ...(diagnostic.help === undefined ? [] : [paragraph("  help: ", diagnostic.help, columns)]),
  ];
  return parts.join("\n");
}

/** All of them, an empty line between, and how many there are at the end. */
export function renderText(diagnostics: readonly Diagnostic[], options: TextOptions = {}): string {
  if (diagnostics.length === 0) return "";
  const errors = diagnostics.filter(isError).length;
  const warnings = diagnostics.length - errors;
  const counts = [
    ...(errors > 0 ? [counted(errors, "error")] : []),
    ...(warnings > 0 ? [counted(warnings, "warning")] : []),
  ];
  return `${[...diagnostics.map((d) => renderDiagnostic(d, options)), counts.join(", ")].join("\n\n")}\n`;
}
