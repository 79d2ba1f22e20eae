/** One step of a key path: a name or the number of a list item, and its place in the text. */
export interface Step {
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

/** A key path up to its equals sign, or the place of its fault. */
export type KeyPath =
  | { readonly ok: true; readonly steps: readonly Step[]; readonly equals: number }
  | { readonly ok: false; readonly at: number; readonly why: "no-equals" | "open-quote" | "after-quote" };

/**
 * Reads `key.path` up to its equals sign. A name that contains a dot or an equals sign is in quotes, or has a backslash
 * before that sign; within quotes a backslash escapes a quote or another backslash.
 * @example
 * readKeyPath('parts."clip v1.2".mass=5 g').steps[1].name // => "clip v1.2"
 * readKeyPath("parts.clip v1\\.2.mass=5 g").steps[1].name // => "clip v1.2"
 * readKeyPath("parts.clip.mass=5 g").equals // => 15
 * readKeyPath("parts.clip.mass").ok // => false
 */
export function readKeyPath(text: string): KeyPath {
  const steps: Step[] = [];
  let start = 0;
  let name = "";
  let at = 0;
  for (;;) {
    const quote = at === start && (text[at] === '"' || text[at] === "'") ? text[at] : undefined;
    if (quote !== undefined) {
      for (at++; at < text.length && text[at] !== quote; at++) {
        if (text[at] === "\\" && at + 1 < text.length) at++;
        name += text[at];
      }
      if (at >= text.length) return { ok: false, at: start, why: "open-quote" };
      at++;
      if (at < text.length && text[at] !== "." && text[at] !== "=")
        return { ok: false, at, why: "after-quote" };
    }
    if (at >= text.length) return { ok: false, at: 0, why: "no-equals" };
    if (text[at] === "." || text[at] === "=") {
      steps.push({ name, start, end: at });
      if (text[at] === "=") return { ok: true, steps, equals: at };
      start = ++at;
      name = "";
      continue;
    }
    if (text[at] === "\\" && at + 1 < text.length) at++;
    name += text[at++];
  }
}

/**
 * Writes a key path.
 * @example
 * keyPathText(["parts", "clip v1.2", "mass"]) // => 'parts."clip v1.2".mass'
 */
export const keyPathText = (names: readonly (string | number)[]): string =>
  names
    .map(String)
    .map((name) => (/[.="'\\]/.test(name) ? `"${name.replace(/["\\]/g, "\\$&")}"` : name))
    .join(".");
