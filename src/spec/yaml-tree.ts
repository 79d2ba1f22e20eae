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
  SCALAR_STYLE_PLAIN,
  SCALAR_STYLE_SINGLE_QUOTED,
  type ScalarEvent,
  type SequenceEvent,
  YAMLException,
} from "js-yaml";
import { plainValue, taggedValue } from "./yaml-scalar.js";

/** Deepest nesting that is read; a batch file needs 5. */
export const deepest = 64;

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

/** Why a text is no YAML that is read here, and where. */
export interface YamlRefusal {
  readonly reason: string;
  readonly at: number;
}

class Refused extends Error {
  readonly at: number;
  constructor(reason: string, at: number) {
    super(reason);
    this.at = at;
  }
}

/** What the events say, in the order they come. */
class Reading {
  private readonly text: string;
  private readonly events: readonly Event[];
  private next = 0;
  /** End of what has been read last. */
  private last = 0;
  constructor(text: string, events: readonly Event[]) {
    this.text = text;
    this.events = events;
  }

  /** The document, null where it is empty; a second document that is not empty is refused. */
  document(): YamlNode | null {
    let root: YamlNode | null = null;
    for (let count = 0; this.next < this.events.length; count++) {
      const begin = this.events[this.next++]!;
      if (begin.type !== EVENT_DOCUMENT) throw new Refused("no document", this.last);
      for (const directive of begin.directives)
        if (directive.kind !== "yaml" || directive.version !== "1.2")
          throw new Refused("a directive that is not read", 0);
      const at = this.last;
      const node = this.node();
      const empty = node.kind === "scalar" && node.start === node.end && node.value === null;
      if (count === 0) root = empty ? null : node;
      else if (!empty) throw new Refused("a second document", at);
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
      throw new Refused("nothing where something is expected", this.last);
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
      if (inList && tagEnd < 0 && event.anchorEnd < 0) this.last = this.after("-", this.last);
      start = this.last;
      end = this.last;
    } else if (style === SCALAR_STYLE_SINGLE_QUOTED || style === SCALAR_STYLE_DOUBLE_QUOTED) {
      start--;
      end++;
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
    if (tagged === undefined) throw new Refused("a tag that is not read", tagStart);
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
      const key = this.node();
      if (key.kind !== "scalar") throw new Refused("a key that is no plain word", key.start);
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
      throw new Refused("a tag that is not read", tagStart);
    this.last = style === COLLECTION_STYLE_FLOW && /[[{]/.test(this.text[start]!) ? start + 1 : start;
  }

  /** The end of a list or map: its bracket, or the end of what stands last in it. */
  private close({ start, style }: SequenceEvent | MappingEvent, bracket: string): number {
    this.next++;
    // A pair in brackets, such as [a: 1], is a map without braces.
    if (style === COLLECTION_STYLE_FLOW && (bracket === "]" || this.text[start] === "{"))
      this.last = this.after(bracket, this.last);
    return this.last;
  }

  /** Where a sign ends before which only white space, commas, colons and comments stand. */
  private after(sign: string, from: number): number {
    for (let at = from; at < this.text.length; at++) {
      const c = this.text[at]!;
      if (c === sign) return at + 1;
      if (c === "#") {
        const end = this.text.indexOf("\n", at);
        if (end < 0) break;
        at = end;
      } else if (!/[\s,:?]/.test(c)) break;
    }
    return from;
  }
}

/** The tree of a YAML text, null where it holds nothing, or why it is refused. The parser is js-yaml. */
export function yamlTree(text: string): { readonly root: YamlNode | null } | YamlRefusal {
  try {
    return { root: new Reading(text, parseEvents(text, { maxDepth: deepest })).document() };
  } catch (thrown) {
    if (thrown instanceof Refused) return { reason: thrown.message, at: thrown.at };
    if (thrown instanceof YAMLException) return { reason: thrown.reason, at: thrown.mark?.position ?? 0 };
    throw thrown;
  }
}
