import * as z from "zod";
import type { Outcome } from "../../core/fault.js";

/** What a key means, for editors and for the table of keys. */
export interface Meaning {
  readonly description: string;
  readonly examples?: readonly unknown[];
  /** What holds without the key, as it would be written in the file. */
  readonly default?: unknown;
  /** The same where it is a rule or an assumption, in words. */
  readonly otherwise?: string;
}

/** What zod carries for us with an issue of our own. */
export interface Told {
  readonly code: string;
  readonly help?: string;
  readonly part?: "key" | "value";
}

/** JSON types and other rules of JSON Schema that a leaf accepts. */
export type JsonForm = { readonly type: string | readonly string[]; readonly [rule: string]: unknown };

/** "a list", "a text": what kind of thing stands in the file. */
export const thing = (value: unknown): string =>
  value === null || value === undefined
    ? "nothing"
    : Array.isArray(value)
      ? "a list"
      : typeof value === "object"
        ? "a map"
        : typeof value === "string"
          ? "a text"
          : typeof value === "boolean"
            ? `${value}`
            : "a number";

/**
 * One value of the file, read by a function that returns a value or faults. A fault does not stop the rest
 * from being checked: the value is then undefined.
 */
export const leaf = <T>(form: JsonForm, meaning: Meaning, reader: (input: unknown) => Outcome<T>) => {
  const read = rememberWords(reader);
  return z
    .unknown()
    .meta({ ...form, ...meaning } as Record<string, unknown>)
    .transform((input, ctx): T => {
      const tell = (code: string, message: string, help: string | undefined): T => {
        ctx.issues.push({
          code: "custom",
          message,
          input,
          // A map may be what another option of a union takes: that one's faults are then the ones to tell.
          continue: typeof input !== "object" || input === null,
          params: { code, help } satisfies Record<keyof Omit<Told, "part">, unknown>,
        });
        return undefined as T;
      };
      if (input === undefined) return tell("missing-key", "missing", undefined);
      const outcome = read(input);
      if (outcome.ok) return outcome.value;
      for (const fault of outcome.faults) tell(fault.code, fault.message, fault.help);
      return undefined as T;
    });
};

/** Texts that a leaf remembers: a sweep reads the same ones a thousand times. */
const mostWords = 64;

function rememberWords<T>(reader: (input: unknown) => Outcome<T>): (input: unknown) => Outcome<T> {
  const known = new Map<string, Outcome<T>>();
  return (input) => {
    if (typeof input !== "string") return reader(input);
    const before = known.get(input);
    if (before !== undefined) return before;
    const outcome = reader(input);
    if (known.size < mostWords) known.set(input, outcome);
    return outcome;
  };
}
