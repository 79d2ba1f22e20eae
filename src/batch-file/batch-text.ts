/** Top-level keys that a command can require; baths always, or where some order is dyed. */
export type Need = "tanks" | "dyes" | "parts" | "shades" | "baths" | "bathsIfDyed" | "orders" | "bases";

/** One batch file, and what a command needs from it. */
export interface BatchText {
  /** Name of the file as the user gave it; "-" for standard input. */
  readonly name: string;
  readonly text: string;
  /** Arguments of `--set`, in order. */
  readonly overrides?: readonly string[];
  /** The bath log for baths with `start: log`, in place of the one that the file names; relative to the working directory. */
  readonly log?: string;
  /** False where what the baths start as is not looked at: no log is read for it. */
  readonly startsMatter?: boolean;
  /** The day is planned as it began: of the log's rows of that day only a making up counts, where they are its last. */
  readonly asDayBegan?: boolean;
  readonly needs?: readonly Need[];
  /** Decides from the unchecked data whether to read the batch; default: always. */
  readonly wanted?: (data: Readonly<Record<string, unknown>>) => boolean;
}
