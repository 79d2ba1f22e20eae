import * as z from "zod";
import type { Outcome } from "../../core/fault.js";
import type { KindName } from "../../core/quantity/kinds.js";
import type { PatternLimits } from "../../core/quantity/pattern/quantity-pattern.js";

/** What a key means, for editors and for the table of keys. */
export interface Meaning {
  readonly description: string;
  readonly examples?: readonly unknown[];
  /** The default, as a file writes it. */
  readonly default?: unknown;
  /** The default in words, if it is a rule or an assumption. */
  readonly otherwise?: string;
}

/** Our own data in a custom issue of zod. */
export interface Told {
  readonly code: string;
  readonly help?: string;
  readonly part?: "key" | "value";
}

/** The texts that a leaf reads, if a pattern can describe them: quantities of some kinds, or others. */
export type TextForm =
  | "dilution"
  | "surface"
  | readonly { readonly kind: KindName; readonly limits: PatternLimits & { readonly limits?: string } }[];

/** A template that an editor offers, filled with the key's example or those of the keys that a map needs. */
export interface Snippet {
  readonly label: string;
  readonly description: string;
}

/** What JSON Schema can say about the values of a leaf. */
export interface JsonForm {
  readonly type: string | readonly string[];
  readonly reads?: TextForm;
  /** What to write, where an editor marks a value. */
  readonly errorMessage?: string;
  readonly snippet?: Snippet;
  readonly [rule: string]: unknown;
}

/** "a list", "a text", "true" */
const thing = (value: unknown): string =>
  Array.isArray(value)
    ? "a list"
    : typeof value === "object"
      ? "a map"
      : typeof value === "string"
        ? "a text"
        : typeof value === "boolean"
          ? `${value}`
          : "a number";

/** "this is a list, not a volume" */
export const notA = (wanted: string, value: unknown): string =>
  value === null || value === undefined ? `${wanted} is missing` : `this is ${thing(value)}, not ${wanted}`;
/**
 * One value of the file, read by a function that returns a value or faults. After a fault the value is undefined and
 * checking goes on.
 */
export const leaf = <T>(form: JsonForm, meaning: Meaning, reader: (input: unknown) => Outcome<T>) => {
  const read = rememberWords(reader);
  return (
    z
      .unknown()
      // Like meta(), which would copy each of the hundred leaves of a file.
      .register(z.globalRegistry, { ...form, ...meaning } as Record<string, unknown>)
      .transform((input, ctx): T => {
        const tell = (code: string, message: string, help: string | undefined): T => {
          ctx.issues.push({
            code: "custom",
            message,
            input,
            // Another option of a union may read a map; zod must then try it and report its faults.
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

/** Most texts that a leaf caches: a sweep reads the same ones a thousand times. */
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
