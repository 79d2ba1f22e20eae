/** What was left by runs of `cost --out` that were killed. */
export declare function killRounds(
  rounds: number,
  batches?: number,
): Promise<{
  readonly rounds: number;
  readonly killed: number;
  readonly begun: number;
  readonly old: number;
  readonly new: number;
  readonly torn: number;
}>;
