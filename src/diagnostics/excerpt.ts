import stringWidth from "fast-string-width";
import type { Span } from "./diagnostic.js";
import { visible } from "./visible.js";

/** Characters before and behind a fault that are looked at: a line of a megabyte is not measured whole. */
const near = 1000;

/** A line of input and the marks to print beneath it, cut to a number of columns around the fault. */
export interface Excerpt {
  readonly line: string;
  readonly marks: string;
}

/** A piece of a line as it is shown: a tab, which would move the marks, is one space. */
const shownLine = (text: string): string => visible(text.replaceAll("\t", " "));
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
  const piece = span.text.slice(skipped, span.column - 1 + near);
  const at = Math.min(span.column - 1 - skipped, piece.length);
  const ahead = shownLine(piece.slice(0, at));
  const fault = shownLine(piece.slice(at, at + Math.max(1, span.length)));
  const text = `${ahead}${fault}${shownLine(piece.slice(at + Math.max(1, span.length)))}`;
  const start = ahead.length;
  const end = start + Math.max(1, fault.length);
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
