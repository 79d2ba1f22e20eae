import stringWidth from "fast-string-width";
import type { Span } from "./diagnostic.js";

/** Characters before and behind a fault that are looked at: a line of a megabyte is not measured whole. */
const near = 1000;

/** A line of input and the marks to print beneath it, cut to a number of columns around the fault. */
export interface Excerpt {
  readonly line: string;
  readonly marks: string;
}

/** One space for tabs and other control characters, which would move the marks or act on the terminal. */
export const flat = (text: string): string => text.replace(/[\p{Cc}\u2028-\u202e\u2066-\u2069]/gu, " ");
const isLowSurrogate = (code: number): boolean => code >= 0xdc00 && code <= 0xdfff;

/** The longest beginning of a text that fits the columns, whole characters only. */
function fitting(text: string, columns: number): string {
  let end = Math.min(text.length, columns);
  while (end > 0 && (stringWidth(text.slice(0, end)) > columns || isLowSurrogate(text.charCodeAt(end))))
    end--;
  return text.slice(0, end);
}

/** The line of a span with its fault marked, at most `columns` wide; a long line is cut around the fault. */
export function excerpt(span: Span, columns: number): Excerpt {
  const skipped = Math.max(0, span.column - 1 - near);
  const text = flat(span.text.slice(skipped, span.column - 1 + near));
  const start = Math.min(span.column - 1 - skipped, text.length);
  const end = Math.min(start + Math.max(1, span.length), Math.max(text.length, start + 1));
  let from = 0;
  if (skipped > 0 || stringWidth(text.slice(0, end)) > columns) {
    from = Math.max(0, start - Math.floor(columns / 4));
    if (isLowSurrogate(text.charCodeAt(from))) from++;
  }
  const lead = from > 0 ? "..." : "";
  const room = columns - lead.length;
  const rest = text.slice(from).trimEnd();
  const whole = stringWidth(rest) <= room;
  const shown = whole ? rest : fitting(rest, room - 3);
  const before = lead.length + stringWidth(text.slice(from, start));
  const width = Math.max(1, Math.min(stringWidth(text.slice(start, end)), columns - before));
  return { line: `${lead}${shown}${whole ? "" : "..."}`, marks: `${" ".repeat(before)}${"^".repeat(width)}` };
}
