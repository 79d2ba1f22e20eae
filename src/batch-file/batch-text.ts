/** Top-level keys that a command cannot do without. */
export type Need = "tanks" | "dyes" | "parts" | "shades" | "baths" | "orders" | "bases";

/** One batch file, and what is asked of it. */
export interface BatchText {
  /** Name of the file as the user gave it; "-" for standard input. */
  readonly name: string;
  readonly text: string;
  /** Arguments of `--set`, in order. */
  readonly overrides?: readonly string[];
  readonly needs?: readonly Need[];
  /** Whether the batch is wanted, told from its data before they are checked; all are where absent. */
  readonly wanted?: (data: Readonly<Record<string, unknown>>) => boolean;
}
