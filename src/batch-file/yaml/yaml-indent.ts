import { counted } from "../../core/quantity/text/counted.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Lines } from "../source/lines.js";
import { type Begin, type YamlLine, yamlLines } from "./yaml-line.js";

/** Keys of one map, or items of one list, which begin in one column. */
interface Level extends Begin {
  /** The last line so far on which a key or item of this level begins. */
  line: number;
}

/** A line that is indented wrongly. */
export interface WrongIndent {
  /** Offset of the line above it: faults that the parser finds from there on follow from this one. */
  readonly from: number;
  readonly diagnostic: Diagnostic;
}

interface Words {
  readonly message: string;
  readonly help: string;
}

const spaces = (count: number): string => counted(count, "space");

/** The nearest columns on both sides that have the same kind, each with a line that begins there. */
function fitting(levels: readonly Level[], { kind, column }: Begin): string {
  const alike = levels.filter((level) => level.kind === kind);
  const less = alike.filter((level) => level.column < column).at(-1);
  const more = alike.find((level) => level.column > column);
  return `indent it by ${[more, less]
    .filter((level) => level !== undefined)
    .map((level) => `${spaces(level.column)} like line ${level.line}`)
    .join(", or by ")}`;
}

/**
 * Adds a key or item to the open levels, the outermost first, or says why it fits none. `above` is the line before it.
 */
function place(
  levels: Level[],
  begin: Begin,
  line: number,
  above: Pick<YamlLine, "line" | "begins" | "open"> | undefined,
): Words | undefined {
  const { kind, column } = begin;
  const closed: Level[] = [];
  const help = (): string => fitting([...levels, ...closed.reverse()], begin);
  for (let last = levels.at(-1); last !== undefined; last = levels.at(-1)) {
    // The dashes of a list may begin in the column of its key; the next key closes it.
    const listOfKey = last.column === column && last.kind === "item" && levels.at(-2)?.column === column;
    if (!(last.column > column || (kind === "key" && listOfKey))) break;
    closed.push(last);
    levels.pop();
  }
  const here = levels.at(-1);
  if (here?.column === column && here.kind === kind) {
    here.line = line;
    return undefined;
  }
  const by = `the ${kind === "item" ? "dash" : "key"} is indented by ${spaces(column)}`;
  const outermost = closed.at(-1);
  if (here === undefined && outermost !== undefined)
    return {
      message: `${by}, and line ${outermost.line} above it by ${spaces(outermost.column)}`,
      help: "begin both in the first column",
    };
  if (here?.column === column && !(kind === "item" && above?.open === true && above.line === here.line))
    return {
      message: `${by}, where line ${here.line} has a ${here.kind === "item" ? "dash" : "key"}`,
      help: help(),
    };
  if (outermost !== undefined) return { message: `${by}, which fits no line above it`, help: help() };
  // Below a line that is not understood, any indentation may be right.
  if (above !== undefined && !above.open && above.begins.length > 0)
    return {
      message: `${by}, more than line ${above.line} above it, which already has a value`,
      help: help(),
    };
  levels.push({ kind, column, line });
  return undefined;
}

const dashHelp = "begin an item of a list with a dash and a space";

/** The first line of a YAML text that is indented wrongly. Only for a text that the parser refused. */
export function wrongIndent(text: string, lines: Lines): WrongIndent | undefined {
  const levels: Level[] = [];
  let above: YamlLine | undefined;
  const lineEnd = (at: number): number => {
    const end = text.indexOf("\n", at);
    return (end < 0 ? text : text.slice(0, end)).trimEnd().length;
  };
  const found = (at: number, { message, help }: Words, end = lineEnd(at)): WrongIndent => {
    const span = lines.span(at, end);
    const from = above?.offset ?? 0;
    return { from, diagnostic: { code: "yaml", severity: "error", message, help, spans: [span] } };
  };
  for (const one of yamlLines(text)) {
    if (one.tab) {
      const more = [...yamlLines(text)].filter(({ tab, line }) => tab && line > one.line).length;
      const like = more === 0 ? "" : `, like ${counted(more, "more line")}`;
      return found(
        one.offset,
        {
          message: `the line is indented with a tab${like}`,
          help: "indent with spaces: two for each level",
        },
        one.offset + one.blanks,
      );
    }
    for (const [i, begin] of one.begins.entries()) {
      const before = i === 0 ? above : { ...one, open: true };
      const wrong = place(levels, begin, one.line, before);
      if (wrong === undefined) continue;
      const dash = begin.kind === "key" && text[one.offset + one.blanks] === "-" && one.begins.length === 1;
      return found(one.offset + one.blanks, dash ? { ...wrong, help: dashHelp } : wrong);
    }
    above = one;
  }
  return undefined;
}
