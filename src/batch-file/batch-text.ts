/** Top-level keys that a command can require. */
export type Need = "tanks" | "dyes" | "parts" | "shades" | "baths" | "orders" | "bases";

/** One batch file, and what a command needs from it. */
export interface BatchText {
  /** Name of the file as the user gave it; "-" for standard input. */
  readonly name: string;
  readonly text: string;
  /** Arguments of `--set`, in order. */
  readonly overrides?: readonly string[];
  readonly needs?: readonly Need[];
  /** Decides from the unchecked data whether to read the batch; default: always. */
  readonly wanted?: (data: Readonly<Record<string, unknown>>) => boolean;
}
