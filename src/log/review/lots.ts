import type { LotReading } from "../../core/quality/lots/lot-shifts.js";
import type { LoadRow, LogRow, MadeUpRow, TopUpRow } from "../row/log-row.js";
import type { Foreseen } from "./learn-dye.js";

/** Readings of loads whose lot is known. */
export const lotReadings = (
  foreseen: readonly Foreseen[],
  lotOf: (row: LoadRow) => string | undefined,
): LotReading[] =>
  foreseen.flatMap(({ reading, freshSeconds }) => {
    const lot = lotOf(reading.row);
    return lot === undefined
      ? []
      : [
          {
            lot,
            foreseen: reading.colourOf(freshSeconds),
            read: reading.lab,
            deltaE00PerLogTime: reading.deltaE00PerLogTime,
          },
        ];
  });

/** The lot of the dye in a bath when a load went in: its own, or the last that was poured in. */
export const dyeLotOf =
  (rows: readonly LogRow[]) =>
  (load: LoadRow): string | undefined =>
    load.dyeLot ??
    rows
      .filter(
        (row): row is MadeUpRow | TopUpRow =>
          (row.event === "made-up" || row.event === "top-up") &&
          row.bath === load.bath &&
          row.time.seconds <= load.time.seconds,
      )
      .findLast(({ event, dyeLot }) => event === "made-up" || dyeLot !== undefined)?.dyeLot;
