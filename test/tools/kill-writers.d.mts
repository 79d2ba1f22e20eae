/** What two writers left who were killed so many times together. */
export declare function killWriters(
  kills: number,
  seed: number,
): Promise<{
  readonly killed: number;
  /** Notes of the rows whose writers were told that they are recorded. */
  readonly acknowledged: readonly string[];
  /** Pieces of rows that were left in the log on purpose. */
  readonly pieces: readonly string[];
  /** What writers complained of. */
  readonly faults: readonly string[];
  /** What was set aside. */
  readonly torn: string;
  readonly text: string;
}>;
