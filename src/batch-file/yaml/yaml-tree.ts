import {
  COLLECTION_STYLE_FLOW,
  EVENT_ALIAS,
  EVENT_DOCUMENT,
  EVENT_MAPPING,
  EVENT_POP,
  EVENT_SCALAR,
  type Event,
  getScalarValue,
  type MappingEvent,
  parseEvents,
  SCALAR_STYLE_DOUBLE_QUOTED,
  SCALAR_STYLE_LITERAL_BLOCK,
  SCALAR_STYLE_PLAIN,
  SCALAR_STYLE_SINGLE_QUOTED,
  type ScalarEvent,
  type SequenceEvent,
  YAMLException,
} from "js-yaml";
import { plainValue, taggedValue } from "./yaml-scalar.js";

/** Deepest nesting allowed; a batch file needs 5. */
export const deepest = 64;

/** Longest key allowed: the YAML limit for keys without a question mark. */
const longestKey = 1024;

interface Placed {
  /** Where it begins and ends in the text. */
  start: number;
  end: number;
  /** The name after &. */
  readonly anchor?: string;
}
export interface YamlScalar extends Placed {
  readonly kind: "scalar";
  /** Without quotes, tag and line breaks that only fold. */
  text: string;
  value: unknown;
  /** Written without quotes and without a tag. */
  readonly bare: boolean;
}
export interface YamlList extends Placed {
  readonly kind: "list";
  readonly items: YamlNode[];
}
export interface YamlMap extends Placed {
  readonly kind: "map";
  /** In braces. */
  readonly flow: boolean;
  entries: YamlEntry[];
}
export interface YamlEntry {
  readonly key: YamlScalar;
  readonly value: YamlNode;
}
export interface YamlAlias extends Placed {
  readonly kind: "alias";
  readonly name: string;
}
export type YamlNode = YamlScalar | YamlList | YamlMap | YamlAlias;

/** Thrown for a text that this reader does not accept. */
class Refused extends Error {}

/** Builds the tree from the events, in order. */
class Reading {
  private readonly text: string;
  private readonly events: readonly Event[];
  private next = 0;
  /** End of the part read last. */
  private last = 0;
  constructor(text: string, events: readonly Event[]) {
    this.text = text;
    this.events = events;
  }

  /** The document, null if it is empty; refuses a second document that is not empty. */
  document(): YamlNode | null {
    let root: YamlNode | null = null;
    for (let count = 0; this.next < this.events.length; count++) {
      const begin = this.events[this.next++]!;
      if (begin.type !== EVENT_DOCUMENT) throw new Refused("no document");
      for (const directive of begin.directives)
        if (directive.kind !== "yaml" || directive.version !== "1.2")
          throw new Refused("a directive that is not read");
      const node = this.node();
      const empty = node.kind === "scalar" && node.start === node.end && node.value === null;
      if (count === 0) root = empty ? null : node;
      else if (!empty) throw new Refused("a second document");
      this.next++;
    }
    return root;
  }

  private node(inList = false): YamlNode {
    const event = this.events[this.next++]!;
    if (event.type === EVENT_SCALAR) return this.scalar(event, inList);
    if (event.type === EVENT_ALIAS) {
      const { anchorStart: start, anchorEnd: end } = event;
      this.last = end;
      return { kind: "alias", start: start - 1, end, name: this.text.slice(start, end) };
    }
    if (event.type === EVENT_POP || event.type === EVENT_DOCUMENT)
      throw new Refused("nothing where something is expected");
    return event.type === EVENT_MAPPING ? this.map(event) : this.list(event);
  }

  private anchor({ anchorStart, anchorEnd }: ScalarEvent | SequenceEvent | MappingEvent): {
    anchor?: string;
  } {
    return anchorStart < 0 ? {} : { anchor: this.text.slice(anchorStart, anchorEnd) };
  }

  private scalar(event: ScalarEvent, inList: boolean): YamlScalar {
    const { valueStart, valueEnd, tagStart, tagEnd, style } = event;
    let start = valueStart;
    let end = valueEnd;
    if (valueStart < 0) {
      this.last = Math.max(this.last, tagEnd, event.anchorEnd);
      if (inList && tagEnd < 0 && event.anchorEnd < 0) this.pass("-");
      start = this.last;
      end = this.last;
    } else if (style === SCALAR_STYLE_SINGLE_QUOTED || style === SCALAR_STYLE_DOUBLE_QUOTED) {
      start--;
      end++;
    } else if (style !== SCALAR_STYLE_PLAIN) {
      const from = Math.max(this.last, tagEnd, event.anchorEnd);
      start = this.find(style === SCALAR_STYLE_LITERAL_BLOCK ? "|" : ">", from) ?? valueStart;
    }
    this.last = end;
    const text = valueStart < 0 ? "" : getScalarValue(this.text, event);
    const plain = style === SCALAR_STYLE_PLAIN;
    if (tagStart < 0)
      return {
        kind: "scalar",
        start,
        end,
        text,
        value: plain ? plainValue(text) : text,
        bare: plain,
        ...this.anchor(event),
      };
    const tagged = taggedValue(text, this.text.slice(tagStart, tagEnd));
    if (tagged === undefined) throw new Refused("a tag that is not read");
    return { kind: "scalar", start, end, text, value: tagged.value, bare: false, ...this.anchor(event) };
  }

  private list(event: SequenceEvent): YamlList {
    this.open(event, "!!seq");
    const items: YamlNode[] = [];
    while (this.events[this.next]!.type !== EVENT_POP) items.push(this.node(true));
    return { kind: "list", start: event.start, end: this.close(event, "]"), items, ...this.anchor(event) };
  }

  private map(event: MappingEvent): YamlMap {
    this.open(event, "!!map");
    const entries: YamlEntry[] = [];
    while (this.events[this.next]!.type !== EVENT_POP) {
      const first = this.events[this.next]!;
      // A missing key gets the place before its colon.
      if (first.type === EVENT_SCALAR && first.valueStart < 0)
        this.last = this.find(":", this.last) ?? this.last;
      const key = this.node();
      if (key.kind !== "scalar" || key.end - key.start > longestKey)
        throw new Refused("a key that is not a plain word, or too long");
      const next = this.events[this.next]!;
      if (next.type === EVENT_SCALAR && next.valueStart < 0) this.pass(":");
      entries.push({ key, value: this.node() });
    }
    return {
      kind: "map",
      start: event.start,
      end: this.close(event, "}"),
      flow: event.style === COLLECTION_STYLE_FLOW,
      entries,
      ...this.anchor(event),
    };
  }

  private open({ start, style, tagStart, tagEnd }: SequenceEvent | MappingEvent, fits: string): void {
    if (tagStart >= 0 && this.text.slice(tagStart, tagEnd) !== fits)
      throw new Refused("a tag that is not read");
    this.last = style === COLLECTION_STYLE_FLOW && /[[{]/.test(this.text[start]!) ? start + 1 : start;
  }

  /** The end of a list or map: its bracket, or the end of its last node. */
  private close({ start, style }: SequenceEvent | MappingEvent, bracket: string): number {
    this.next++;
    // A pair in brackets, such as [a: 1], is a map without braces.
    if (style === COLLECTION_STYLE_FLOW && (bracket === "]" || this.text[start] === "{")) this.pass(bracket);
    return this.last;
  }

  /** Skips a sign if it comes next. */
  private pass(sign: string): void {
    const at = this.find(sign, this.last);
    if (at !== undefined) this.last = at + 1;
  }

  /** The place of a sign, if only white space, comments and the signs , : ? - come before it. */
  private find(sign: string, from: number): number | undefined {
    for (let at = from; at < this.text.length; at++) {
      const c = this.text[at]!;
      if (c === sign) return at;
      if (c === "#") {
        const end = this.text.indexOf("\n", at);
        if (end < 0) return undefined;
        at = end;
      } else if (!/[\s,:?-]/.test(c)) return undefined;
    }
    return undefined;
  }
}

/**
 * The tree of a YAML text by js-yaml, null if the text has no data. Undefined if the text is refused: it is not well
 * formed, nests too deep, or has directives, tags outside the core schema, keys that are not plain words, or a second
 * document.
 */
export function yamlTree(text: string): { readonly root: YamlNode | null } | undefined {
  try {
    return { root: new Reading(text, parseEvents(text, { maxDepth: deepest })).document() };
  } catch (thrown) {
    if (thrown instanceof Refused || thrown instanceof YAMLException) return undefined;
    throw thrown;
  }
}
