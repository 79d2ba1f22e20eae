import { type KeyPath, readKeyPath } from "../../batch-file/source/key-path.js";
import { type Override, readOverride } from "../../batch-file/source/override.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";

/** A key of the batch and what it is set to, one after the other. */
export interface Varied {
  readonly key: string;
  /** The names that the key is made of, as written. */
  readonly names: readonly string[];
  readonly values: readonly { readonly text: string; readonly change: Override }[];
}

const usage = (text: string, message: string, help: string): Diagnostic => ({
  code: "usage",
  severity: "error",
  message: `--vary ${text}: ${message}`,
  help,
  spans: [],
});

/**
 * The values of a list parted by commas; commas within brackets, braces and quotes part nothing.
 * @example
 * splitValues("6 L, { a: 1, b: 2 },[1, 2]") // => ["6 L", "{ a: 1, b: 2 }", "[1, 2]"]
 */
export function splitValues(list: string): string[] {
  const values: string[] = [""];
  let depth = 0;
  let quote = "";
  for (const sign of list) {
    if (quote !== "") quote = sign === quote ? "" : quote;
    else if (sign === '"' || sign === "'") quote = sign;
    else if (sign === "[" || sign === "{") depth++;
    else if (sign === "]" || sign === "}") depth--;
    else if (sign === "," && depth === 0) {
      values.push("");
      continue;
    }
    values[values.length - 1] += sign;
  }
  return values.map((value) => value.trim());
}

const range = /^(-?\d+(?:\.\d+)?)\s*(\S*?)\s*\.\.\s*(-?\d+(?:\.\d+)?)\s*(\S*?)\s*\/\s*(\d+)$/;

/**
 * A range as so many values at even steps, both ends among them; any other text as it is.
 * @example
 * spreadRange("10 s..60 s/3") // => ["10 s", "35 s", "60 s"]
 * spreadRange("1:9") // => ["1:9"]
 */
export function spreadRange(text: string): string[] {
  const [, from, unitFrom, to, unitTo = "", steps] = range.exec(text) ?? [];
  if (from === undefined || (unitFrom !== "" && unitFrom !== unitTo) || Number(steps) < 2) return [text];
  const [low, high, count] = [Number(from), Number(to), Number(steps)];
  return Array.from({ length: count }, (_, i) => {
    const value = Number((low + ((high - low) * i) / (count - 1)).toPrecision(12));
    return `${value} ${unitTo}`.trim();
  });
}

const namesIn = (argument: string, path: KeyPath): string[] =>
  path.ok ? path.steps.map(({ start, end }) => argument.slice(start, end).trim()) : [];

/** Reads one `--vary KEY=A,B,C`. */
export async function readVaried(
  argument: string,
): Promise<{ varied?: Varied; diagnostics: readonly Diagnostic[] }> {
  const path = readKeyPath(argument);
  const equals = path.ok ? path.equals : argument.indexOf("=");
  if (equals < 1)
    return {
      diagnostics: [
        usage(
          argument,
          "no key or no values",
          "write --vary key.path=A,B,C: --vary tanks.six.volume='6 L,8 L'",
        ),
      ],
    };
  const key = argument.slice(0, equals).trim();
  const texts = splitValues(argument.slice(equals + 1)).flatMap(spreadRange);
  if (texts.some((text) => text === ""))
    return {
      diagnostics: [usage(argument, "one of the values is empty", "write one value between two commas")],
    };
  const read = await Promise.all(
    texts.map(async (text) => ({ text, ...(await readOverride(`${key}=${text}`, "--vary")) })),
  );
  const diagnostics = read.flatMap((one) => one.diagnostics);
  if (diagnostics.length > 0) return { diagnostics };
  return {
    varied: {
      key,
      names: namesIn(argument, path),
      values: read.map(({ text, read: change }) => ({ text, change: change! })),
    },
    diagnostics,
  };
}
