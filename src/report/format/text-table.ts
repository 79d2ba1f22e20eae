import { largest } from "../../core/maths/extent.js";
import { type Column, heading, shown, type Table } from "../table.js";
import { share } from "./columns.js";
import { type Paint, swatchTone, type Tone } from "./paint.js";
import { widestWord, widthOf, wrap } from "./wrap.js";

const gap = "  ";
/** Text broken into shorter lines than this is better read row by row. */
const shortest = 12;
const readable = (text: string): number => Math.max(widestWord(text), Math.min(widthOf(text), shortest));
const pad = (text: string, width: number, right: boolean): string => {
  const space = " ".repeat(Math.max(0, width - widthOf(text)));
  return right ? space + text : text + space;
};

const toneOf = ({ swatch, tone }: Column, text: string): Tone | undefined =>
  swatch === true ? swatchTone(text.trim()) : tone;
/** A cell set off in its column's way, the blanks beside a swatch left bare. */
function setOff(column: Column, text: string, paint: Paint): string {
  const tone = toneOf(column, text);
  if (tone === undefined) return text;
  return column.swatch === true ? text.replace(text.trim(), (hex) => paint(tone, hex)) : paint(tone, text);
}

/** How far a note under a row is set in. */
const indent = "  ";

const noteLines = (note: string | null, width: number): string[] =>
  note === null ? [] : wrap(note, width - indent.length).map((line) => indent + line);

/** One row after the other as "title: value" lines, for a table that no width can hold. */
function stacked(
  columns: readonly Column[],
  cells: readonly (readonly string[])[],
  noted: readonly (readonly string[])[],
  width: number,
  paint: Paint,
): string[] {
  const titles = columns.map(heading);
  const label = Math.min(largest(titles.map(widthOf)), Math.floor(width / 3));
  return cells.flatMap((row, index) => [
    ...(index > 0 ? [""] : []),
    ...row.flatMap((cell, i) => {
      const left = wrap(titles[i]!, label);
      const right = wrap(cell, width - label - gap.length);
      return Array.from({ length: Math.max(left.length, right.length) }, (_, line) =>
        `${pad(left[line] ?? "", label, false)}${gap}${setOff(columns[i]!, right[line] ?? "", paint)}`.trimEnd(),
      );
    }),
    ...(noted[index] ?? []),
  ]);
}

/**
 * A table as lines of at most `width` columns: headers and text break between words, numbers never do. A table
 * too wide even so is written row by row.
 */
export function textTable({ columns, rows, notes = [] }: Table, width: number, paint: Paint): string[] {
  const titles = columns.map(heading);
  const cells = rows.map((row) => columns.map((column, i) => shown(column, row[i])));
  const numeric = columns.map(({ align }, i) =>
    align === undefined ? rows.some((row) => typeof row[i] === "number") : align === "right",
  );
  const needs = columns.map((_column, i) => {
    const texts = cells.map((row) => row[i]!);
    return {
      least: largest(texts.map(numeric[i] ? widthOf : readable), widestWord(titles[i]!)),
      most: largest(texts.map(widthOf), widthOf(titles[i]!)),
    };
  });
  const widths = share(needs, width - gap.length * (columns.length - 1));
  const noted = notes.map((note) => noteLines(note, width));
  if (widths === undefined) return stacked(columns, cells, noted, width, paint);
  const line = (
    texts: readonly string[],
    tone: (i: number, text: string) => string,
    bottom: boolean,
  ): string[] => {
    const wrapped = texts.map((text, i) => wrap(text, widths[i]!));
    const height = largest(wrapped.map((lines) => lines.length));
    return Array.from({ length: height }, (_, at) =>
      wrapped
        .map((lines, i) =>
          tone(i, pad(lines[bottom ? at - height + lines.length : at] ?? "", widths[i]!, numeric[i]!)),
        )
        .join(gap)
        .trimEnd(),
    );
  };
  const set = (i: number, text: string): string => setOff(columns[i]!, text, paint);
  return [
    ...line(titles, (_i, text) => paint("quiet", text), true),
    ...cells.flatMap((row, i) => [...line(row, set, false), ...(noted[i] ?? [])]),
  ];
}
