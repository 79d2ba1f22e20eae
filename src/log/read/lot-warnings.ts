import { type Fault, warning } from "../../core/fault.js";
import type { LogRow } from "../row/log-row.js";
import { inRow } from "./in-row.js";

const lotColumns = ["powderLot", "dyeLot"] as const;

/** Warnings where two lots differ by zeros in front only, which spreadsheets drop: `0012` and `12`. */
export const lotsWithoutZeros = (rows: readonly LogRow[]): Fault[] =>
  lotColumns.flatMap((column) => {
    const first = new Map<string, { readonly lot: string; readonly row: number }>();
    const lots = new Map<string, number>();
    for (const row of rows) {
      const lot = (row as { readonly [Column in typeof column]?: string })[column];
      if (lot !== undefined && /^\d+$/.test(lot) && !lots.has(lot)) lots.set(lot, row.row!);
    }
    return [...lots].flatMap(([lot, row]) => {
      // As text: of more than 15 digits a number would keep the first ones only.
      const number = lot.replace(/^0+(?=\d)/, "");
      const other = first.get(number);
      first.set(number, other ?? { lot, row });
      return other === undefined
        ? []
        : [
            inRow(
              row,
              column,
              warning(
                "log-lot-zeros",
                [],
                `lot ${lot} counts as another one than lot ${other.lot} of row ${other.row}`,
                "a spreadsheet drops zeros in front: if it is one lot, write it alike, and load the column as text",
              ),
            ),
          ];
    });
  });
