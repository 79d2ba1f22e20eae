import { counted } from "../../core/quantity/text/counted.js";
/** Counts over the files of one run. */
export interface Counts {
  /** Batches that have rows. */
  costed: number;
  /** Files that could not be costed. */
  bad: number;
  /** Found, and no batch. */
  passedOver: number;
  undated: number;
  outside: number;
  /** The first currency of a batch that was left out: the head of an empty table names it. */
  currency: string | null;
  /** Orders over a limit, and other limits that are missed. */
  missed: number;
  /** Warnings that were shown. */
  shown: number;
  /** Warnings that were not shown, by code. */
  readonly warnings: Map<string, number>;
}

export const noCounts = (): Counts => ({
  costed: 0,
  bad: 0,
  passedOver: 0,
  undated: 0,
  outside: 0,
  currency: null,
  missed: 0,
  shown: 0,
  warnings: new Map(),
});

/** Whether a limit is missed, or with --strict anything was warned of. */
export const isMissed = ({ missed, shown, warnings }: Counts, strict: boolean): boolean =>
  missed > 0 || (strict && (shown > 0 || warnings.size > 0));

/** What a person should know of a run over many files; nothing where there is nothing to tell. */
export function countsSaid({
  costed,
  bad,
  passedOver,
  undated,
  outside,
  warnings,
}: Counts): string | undefined {
  // Of a single file its faults tell all.
  const single = costed + bad + passedOver + undated + outside === 1;
  const codes = [...warnings].sort(([a], [b]) => (a < b ? -1 : 1));
  const all = codes.reduce((sum, [, count]) => sum + count, 0);
  const lines = [
    ...(bad > 0 && !single
      ? [`${counted(bad, "file")} could not be costed and ${bad === 1 ? "was" : "were"} left out`]
      : []),
    ...(passedOver > 0 ? [`${counted(passedOver, "file")} without a batch skipped`] : []),
    ...(undated > 0 ? [`${counted(undated, "batch", "batches")} without a date left out`] : []),
    ...(outside > 0 ? [`${counted(outside, "batch", "batches")} of other days left out`] : []),
    ...(all > 0
      ? [
          `${counted(all, "warning")} not shown (${codes.map(([code, count]) => `${code} ${count}`).join(", ")}); dipwright plan FILE shows them`,
        ]
      : []),
  ];
  return lines.length === 0 ? undefined : lines.join("\n");
}
