/** Why the colour of a dip is not offered: no hand can time it, or the bath is never so exact. */
export type LeftOutReason = "too-short" | "too-narrow" | "temperature" | "strength";

export interface ReasonAt {
  readonly seconds: number;
  readonly reason: LeftOutReason;
  /** What it is measured by: shortest dip [s], window [s], change of colour [CIEDE2000]. */
  readonly figure: number;
}

/** Dips of a stretch of time that are left out for one reason, with the worst figure in it. */
export interface LeftOutTimes {
  readonly dye: string;
  readonly base: string | null;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly reason: LeftOutReason;
  readonly worst: number;
}

/** Joins seconds that follow each other and have one reason. */
export function mergedTimes(dye: string, base: string | null, reasons: readonly ReasonAt[]): LeftOutTimes[] {
  const merged: LeftOutTimes[] = [];
  for (const { seconds, reason, figure } of reasons) {
    const last = merged.at(-1);
    if (last?.reason === reason && last.toSeconds === seconds - 1) {
      const worst = reason === "too-narrow" ? Math.min(last.worst, figure) : Math.max(last.worst, figure);
      merged[merged.length - 1] = { ...last, toSeconds: seconds, worst };
    } else merged.push({ dye, base, fromSeconds: seconds, toSeconds: seconds, reason, worst: figure });
  }
  return merged;
}
