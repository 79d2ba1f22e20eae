import * as z from "zod";
import type { Outcome } from "../../core/fault.js";
import type { KindName } from "../../core/quantity/kinds.js";
import type { PatternLimits } from "../../core/quantity/pattern/quantity-pattern.js";

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

/** The texts that a leaf reads, where a pattern can be made for them: quantities of one of some kinds, or others. */
export type TextForm =
  | "dilution"
  | "surface"
  | readonly { readonly kind: KindName; readonly limits: PatternLimits & { readonly limits?: string } }[];

/** A template that an editor offers, made of the key's example or of those of the keys that a map needs. */
export interface Snippet {
  readonly label: string;
  readonly description: string;
}

/** What JSON Schema can say of the values that a leaf reads. */
export interface JsonForm {
  readonly type: string | readonly string[];
  readonly reads?: TextForm;
  /** What to write, where an editor marks a value. */
  readonly errorMessage?: string;
  readonly snippet?: Snippet;
  readonly [rule: string]: unknown;
}

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
  return (
    z
      .unknown()
      // As meta(), which would copy each of the hundred leaves of a file.
      .register(z.globalRegistry, { ...form, ...meaning } as Record<string, unknown>)
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
      })
  );
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
