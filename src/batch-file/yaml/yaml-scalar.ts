import { boolCoreTag, floatCoreTag, intCoreTag, NOT_RESOLVED, nullCoreTag } from "js-yaml";

const tags = [nullCoreTag, boolCoreTag, intCoreTag, floatCoreTag];
type Tag = (typeof tags)[number];

/** The tags that a text with this first character may have. */
const byFirst = new Map<string, Tag[]>();
for (const tag of tags)
  for (const first of tag.implicitFirstChars ?? []) byFirst.set(first, [...(byFirst.get(first) ?? []), tag]);

/** The value of a text without quotes in the core schema of YAML 1.2: null, true, 12, or the text itself. */
export function plainValue(text: string): unknown {
  for (const tag of byFirst.get(text.charAt(0)) ?? []) {
    const value: unknown = tag.resolve(text, false, tag.tagName);
    if (value !== NOT_RESOLVED) return value;
  }
  return text;
}

/** The value of a text with a tag such as !!str; undefined if the tag is unknown or does not fit. */
export function taggedValue(text: string, tag: string): { readonly value: unknown } | undefined {
  if (tag === "!" || tag === "!!str") return { value: text };
  const known = tags.find(({ tagName }) => tag === `!!${tagName.slice("tag:yaml.org,2002:".length)}`);
  const value: unknown =
    known?.resolve(text, true, known.tagName) ?? (known === undefined ? NOT_RESOLVED : null);
  return value === NOT_RESOLVED ? undefined : { value };
}
