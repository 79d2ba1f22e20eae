import { type Block, paragraph, type Report } from "../report.js";
import type { Column } from "../table.js";

/** A load as it is traced. */
export interface TraceRow {
  readonly time: string;
  readonly row: number;
  readonly bath: string;
  readonly dye: string | null;
  readonly part: string;
  readonly shade: string | null;
  readonly parts: number;
  readonly powderLot: string | null;
  readonly dyeLot: string | null;
  readonly madeUp: string | null;
}

const columns: readonly Column[] = [
  { key: "time", title: "time" },
  { key: "row", title: "row" },
  { key: "bath", title: "bath" },
  { key: "made_up", title: "made up" },
  { key: "dye", title: "dye" },
  { key: "part", title: "part" },
  { key: "shade", title: "shade" },
  { key: "parts", title: "parts" },
  { key: "powder_lot", title: "powder lot" },
  { key: "dye_lot", title: "dye lot" },
];

/** Which parts came from which bath and lots on which day. */
export function traceReport(of: string, loads: readonly TraceRow[]): Report {
  const table = {
    columns,
    rows: loads.map((one) => [
      one.time,
      one.row,
      one.bath,
      one.madeUp,
      one.dye,
      one.part,
      one.shade,
      one.parts,
      one.powderLot,
      one.dyeLot,
    ]),
  };
  const parts = loads.reduce((sum, one) => sum + one.parts, 0);
  return {
    name: "review-trace",
    data: { loads },
    rows: table,
    blocks: [
      { kind: "heading", level: 1, text: of },
      ...(loads.length === 0
        ? [paragraph("No load of the log is of it.")]
        : [
            { kind: "table", table } satisfies Block,
            paragraph(`${parts} parts in ${loads.length} ${loads.length === 1 ? "load" : "loads"}.`),
          ]),
    ],
  };
}
