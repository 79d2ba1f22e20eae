import type { TracedLoad } from "../../core/quality/review/review-model.js";
import type { LogRow } from "../row/log-row.js";
import { dyeLotOf } from "./lots.js";

/**
 * Loads of a part, of a lot of powder or dye, or of both, in the order of time.
 * @example
 * traceLoads([{ event: "load", time: { text: "2027-04-16T09:31:00" }, bath: "six", part: "hook", parts: 24, powderLot: "P-1" }], { lot: "P-2" }) // => []
 */
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
