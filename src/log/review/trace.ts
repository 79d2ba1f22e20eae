import type { LogRow } from "../row/log-row.js";
import { dyeLotOf } from "./lots.js";

/** Where a load of parts came from. */
export interface TracedLoad {
  readonly time: string;
  readonly row: number;
  readonly bath: string;
  readonly dye: string | null;
  readonly part: string;
  readonly shade: string | null;
  readonly parts: number;
  readonly powderLot: string | null;
  readonly dyeLot: string | null;
  /** When its bath was made up; null where the log does not say. */
  readonly madeUp: string | null;
}

/** Loads of a part, of a lot of powder or dye, or of both, in the order of time. */
export function traceLoads(
  rows: readonly LogRow[],
  { part, lot }: { readonly part?: string | undefined; readonly lot?: string | undefined },
): TracedLoad[] {
  const lotIn = dyeLotOf(rows);
  return rows.flatMap((row) => {
    if (row.event !== "load" || (part !== undefined && row.part !== part)) return [];
    const dyeLot = lotIn(row) ?? null;
    if (lot !== undefined && row.powderLot !== lot && dyeLot !== lot) return [];
    const madeUp = rows.findLast(
      (one) => one.event === "made-up" && one.bath === row.bath && one.time.seconds <= row.time.seconds,
    );
    return [
      {
        time: row.time.text,
        row: row.row!,
        bath: row.bath,
        dye: row.dye ?? madeUp?.dye ?? null,
        part: row.part,
        shade: row.shade ?? null,
        parts: row.parts,
        powderLot: row.powderLot ?? null,
        dyeLot,
        madeUp: madeUp?.time.text ?? null,
      },
    ];
  });
}
