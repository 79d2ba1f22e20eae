/** An item of a list (its dash) or a key of a map, and the column where it begins, counted from 0. */
export interface Begin {
  readonly kind: "item" | "key";
  readonly column: number;
}

/** A line on which something may begin. */
export interface YamlLine {
  /** Offset of the line in the text. */
  readonly offset: number;
  /** Counted from 1. */
  readonly line: number;
  /** Characters before the first one that is not a blank. */
  readonly blanks: number;
  /** Whether they include a tab. */
  readonly tab: boolean;
  /** The items that begin here, the outermost first, then the key. */
  readonly begins: readonly Begin[];
  /** Whether the last of them has no value on this line, so that lines below may belong to it. */
  readonly open: boolean;
}

/** Where the value after a key begins; undefined if the text does not begin with a key. */
function behindKey(text: string): number | undefined {
  const quoted = /^"(?:[^"\\]|\\.)*"|^'(?:[^']|'')*'/.exec(text)?.[0];
  if (quoted !== undefined) {
    const colon = /^[ \t]*:(?=\s|$)/.exec(text.slice(quoted.length));
    return colon === null ? undefined : quoted.length + colon[0].length;
  }
  const colon = text.search(/:(?=\s|$)/);
  if (colon <= 0 || /^["'#&*!|>%@`{}[\],]/.test(text) || / #/.test(text.slice(0, colon))) return undefined;
  return colon + 1;
}

/** Whether the value is still to come: the text has only anchors, tags and a comment. */
function isOpen(value: string): boolean {
  const words = value.trim().split(/\s+/);
  const comment = words.findIndex((word) => word.startsWith("#"));
  return words.slice(0, comment < 0 ? undefined : comment).every((word) => /^(?:$|[&!])/.test(word));
}

const blockText = /^\s*[|>][-+0-9]*\s*(?:#.*)?$/;

/** The brackets and the quote that a value leaves open at the end of a line. */
interface Unfinished {
  readonly depth: number;
  readonly quote: string;
}

const finished: Unfinished = { depth: 0, quote: "" };

/** The state after one more line of a value. */
function unfinished(value: string, before: Unfinished): Unfinished {
  let { depth, quote } = before;
  const trimmed = value.trimStart();
  if (depth === 0 && quote === "" && !/^["'{[]/.test(trimmed)) return finished;
  for (let at = 0; at < trimmed.length; at++) {
    const sign = trimmed[at]!;
    const first = at === 0 || /[\s,:{[]/.test(trimmed[at - 1]!);
    if (quote !== "") {
      if (sign === "\\" && quote === '"') at++;
      else if (sign === quote) quote = "";
      if (quote === "" && depth === 0) break;
    } else if (sign === "#" && first) break;
    else if ((sign === '"' || sign === "'") && first) quote = sign;
    else if (sign === "{" || sign === "[") depth++;
    else if (sign === "}" || sign === "]") depth = Math.max(0, depth - 1);
  }
  return { depth, quote };
}

/**
 * Lines of a YAML text whose indentation matters: not blank ones, comments, and those within brackets, quotes and block
 * texts. Only for a text that the parser refused, so each line is read by itself.
 */
export function* yamlLines(text: string): Generator<YamlLine> {
  let value: Unfinished = finished;
  /** Lines indented deeper than this belong to a block text. */
  let block: number | undefined;
  let next = 0;
  let line = 0;
  for (const whole of text.split("\n")) {
    const offset = next;
    next += whole.length + 1;
    line++;
    if (value.depth > 0 || value.quote !== "") {
      value = unfinished(whole, value);
      continue;
    }
    const blanks = /^[ \t]*/.exec(whole)![0].length;
    let rest = whole.slice(blanks).trimEnd();
    if (rest === "" || rest.startsWith("#") || /^(?:---|\.\.\.|%)/.test(whole)) continue;
    if (block !== undefined && blanks > block) continue;
    block = undefined;
    const begins: Begin[] = [];
    let column = blanks;
    for (let dash = /^-(?:\s+|$)/.exec(rest); dash !== null; dash = /^-(?:\s+|$)/.exec(rest)) {
      begins.push({ kind: "item", column });
      column += dash[0].length;
      rest = rest.slice(dash[0].length);
    }
    const behind = behindKey(rest);
    if (behind !== undefined) {
      begins.push({ kind: "key", column });
      rest = rest.slice(behind);
    }
    if (blockText.test(rest)) block = begins.at(-1)?.column ?? column;
    else value = unfinished(rest, finished);
    const tab = whole.slice(0, blanks).includes("\t");
    yield { offset, line, blanks, tab, begins, open: isOpen(rest) };
  }
}
