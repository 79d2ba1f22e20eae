import { SaxesParser } from "saxes";
import { error, type Fault } from "../../fault.js";
import { unpack } from "./unpack.js";
import type { ZipEntry } from "./zip.js";

/** An element as it opens: its name and namespace, its attributes without namespace, the line it ends on. */
export interface XmlElement {
  readonly name: string;
  readonly namespace: string;
  readonly attribute: (name: string, namespaceEnd?: string) => string | undefined;
  /** The namespace of a prefix here. */
  readonly namespaceOf: (prefix: string) => string;
  readonly line: number;
}

/** What to do with the elements of a part; a fault ends the reading. */
export interface XmlUse {
  readonly open: (element: XmlElement) => Fault | undefined;
  readonly close?: (name: string, line: number) => Fault | undefined;
}

const deepest = 64;
const mostAttributes = 64;
const stepCharacters = 65_536;

/** The decoder for the first bytes of a part: UTF-8, or UTF-16 if its byte order mark says so. */
const decoderFor = (bytes: Uint8Array) =>
  new TextDecoder(
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? "utf-16le"
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? "utf-16be"
        : "utf-8",
    { fatal: true },
  );

/**
 * Unpacks a part of an archive and reads it as XML, piece by piece. A document type is refused, and with it all
 * entities but those of XML itself; depth and number of attributes are bounded.
 */
export async function readXml(entry: ZipEntry, use: XmlUse): Promise<Fault | undefined> {
  const parser = new SaxesParser({ xmlns: true });
  let found: Fault | undefined;
  let depth = 0;
  let attributes = 0;
  const refuse = (code: string, message: string): void => {
    found ??= error(code, [], `line ${parser.line} of ${entry.name}: ${message}`, "export the model again");
  };
  parser.on("error", (cause) => refuse("mesh-syntax", cause.message.replace(/^(\d+:\d+: )+/, "")));
  parser.on("doctype", () => refuse("mesh-doctype", "a document type is not allowed in a 3MF file"));
  parser.on("opentagstart", () => {
    attributes = 0;
    if (++depth > deepest) refuse("mesh-too-large", `elements are nested more than ${deepest} deep`);
  });
  parser.on("attribute", () => {
    if (++attributes > mostAttributes)
      refuse("mesh-too-large", `an element has over ${mostAttributes} attributes`);
  });
  parser.on("opentag", (tag) => {
    found ??= use.open({
      name: tag.local,
      namespace: tag.uri,
      attribute: (name, namespaceEnd) =>
        namespaceEnd === undefined
          ? tag.attributes[name]?.value
          : Object.values(tag.attributes).find((a) => a.local === name && a.uri.endsWith(namespaceEnd))
              ?.value,
      namespaceOf: (prefix) => parser.resolve(prefix) ?? "",
      line: parser.line,
    });
  });
  parser.on("closetag", (tag) => {
    depth--;
    found ??= use.close?.(tag.local, parser.line);
  });

  let decoder: ReturnType<typeof decoderFor> | undefined;
  const feed = (piece: Uint8Array, stream: boolean): Fault | undefined => {
    decoder ??= decoderFor(piece);
    let text = "";
    try {
      text = decoder.decode(piece, { stream });
    } catch {
      refuse("mesh-syntax", "bytes that are not text in the part's encoding");
    }
    for (let at = 0; at < text.length && found === undefined; at += stepCharacters)
      parser.write(text.slice(at, at + stepCharacters));
    return found;
  };
  const fault =
    (await unpack(entry, (piece) => (piece.length === 0 ? undefined : feed(piece, true)))) ?? found;
  if (fault !== undefined) return fault;
  feed(new Uint8Array(), false);
  if (found === undefined) parser.close();
  return found;
}
