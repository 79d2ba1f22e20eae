import type { YAMLError } from "yaml";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Lines } from "../source/lines.js";
import type { Opening } from "./yaml-opening.js";

interface Words {
  readonly message: string;
  readonly help: string;
}

const byCode: { readonly [code: string]: Words } = {
  TAB_AS_INDENT: {
    message: "the indentation contains a tab",
    help: "indent with spaces: two for each level",
  },
  BAD_ALIAS: { message: "the alias after * is not well formed", help: "write the value itself" },
  ALIAS_PROPS: { message: "an alias cannot carry an anchor or a tag", help: "write the value itself" },
  BAD_DIRECTIVE: { message: "this directive is unknown", help: "remove the line that begins with %" },
  BAD_DQ_ESCAPE: {
    message: "the backslash begins an unknown escape",
    help: "write the text in single quotes, where a backslash is a backslash",
  },
  BLOCK_IN_FLOW: {
    message: "a comma is missing between entries in braces or brackets",
    help: "write { time: 30 s, lab: [73.5, 33.0, 15.9] }, or one key a line without braces",
  },
  KEY_OVER_1024_CHARS: { message: "the key is too long", help: "use a short name" },
  MULTILINE_IMPLICIT_KEY: {
    message: "a key and its colon must be on one line",
    help: "write key: value; is a colon missing?",
  },
  MULTIPLE_ANCHORS: { message: "the value has two anchors", help: "keep one of them" },
  MULTIPLE_TAGS: { message: "the value has two tags", help: "remove them" },
  NON_STRING_KEY: { message: "the key is not a plain word", help: "use a name as the key" },
  TAG_RESOLVE_FAILED: {
    message: "this tag is unknown",
    help: "remove it; put a text that begins with ! in quotes",
  },
  BAD_COLLECTION_TYPE: { message: "the tag does not fit its value", help: "remove the tag" },
  BAD_PROP_ORDER: { message: "the anchor or tag is in the wrong place", help: "put it before the value" },
};

function words(error: YAMLError): Words {
  if (error.code === "BLOCK_AS_IMPLICIT_KEY")
    return {
      message: "the value contains a second colon",
      help: 'put a text with ": " in it in quotes, or begin a new line',
    };
  if (error.code === "BAD_INDENT")
    return {
      message: "the line is indented differently from the lines it belongs with",
      help: "let the keys of one map begin in the same column",
    };
  if (error.code === "BAD_SCALAR_START")
    return {
      message: "the text begins with a character that has a meaning of its own",
      help: "put the text in quotes",
    };
  if (error.code === "MISSING_CHAR" && /map values|Implicit/.test(error.message))
    return {
      message: "the key has no value",
      help: "write key: value; a list item is a dash and a space",
    };
  if (error.code === "UNEXPECTED_TOKEN" && /at node end/.test(error.message))
    return {
      message: "something follows the end of the value",
      help: "put the whole text in quotes, or begin a new line",
    };
  if (error.code === "UNEXPECTED_TOKEN" && /, in flow/.test(error.message))
    return { message: "the comma has nothing before it", help: "remove it" };
  return (
    byCode[error.code] ?? {
      message: `not well-formed YAML: ${error.message}`,
      help: "see the examples for the form",
    }
  );
}

const unclosed = (error: YAMLError): boolean =>
  /^Flow (?:map|sequence)|^Missing closing/.test(error.message) && error.code !== "UNEXPECTED_TOKEN";

const names: { readonly [sign: string]: readonly [name: string, close: string] } = {
  "{": ["brace", "}"],
  "[": ["bracket", "]"],
  '"': ["quote", '"'],
  "'": ["quote", "'"],
};

/** The place of an error: the text that it is about, on one line. */
function place(error: YAMLError, text: string): readonly [number, number] {
  const [start, end] = error.pos;
  if (error.code === "BAD_INDENT" || error.code === "BLOCK_AS_IMPLICIT_KEY") {
    const rest = /^[ \t]*/.exec(text.slice(start, start + 200))![0].length;
    const stop = text.indexOf("\n", start + rest);
    return [start + rest, (stop < 0 ? text : text.slice(0, stop)).trimEnd().length];
  }
  return [start, end];
}

/** An error of the yaml package, in the words of this tool. */
export function yamlFault(
  error: YAMLError,
  text: string,
  lines: Lines,
  open: readonly Opening[],
): Diagnostic {
  const opening = unclosed(error) ? open.findLast(({ offset }) => offset < error.pos[0]) : undefined;
  if (opening !== undefined) {
    const [name, close] = names[opening.sign] ?? ["bracket", "]"];
    return {
      code: "yaml",
      severity: "error",
      message: `this ${name} is not closed`,
      help:
        name === "quote"
          ? `close it with ${close} on the same line`
          : `close it with ${close}; # begins a comment, so put a colour in quotes: "#d9603b"`,
      spans: [lines.span(opening.offset, opening.offset + 1)],
    };
  }
  return { code: "yaml", severity: "error", ...words(error), spans: [lines.span(...place(error, text))] };
}
