import type { TracedLoad } from "../../core/quality/review/review-model.js";
import { type Block, paragraph, type Report } from "../report.js";
import type { Column } from "../table.js";

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

/** On paper the row of the log is left out, and a bath is its tank and the day when it was made up. */
const shortColumns: readonly Column[] = [
  { key: "time", title: "time" },
  { key: "bath", title: "bath of" },
  { key: "part", title: "part" },
  { key: "shade", title: "shade" },
  { key: "parts", title: "parts" },
  { key: "powder_lot", title: "powder" },
  { key: "dye_lot", title: "dye lot" },
];

const shortRow = ({ time, bath, madeUp, part, shade, parts, powderLot, dyeLot }: TracedLoad) => [
  time.slice(0, "2027-04-16T09:31".length).replace("T", " "),
  [bath, madeUp?.slice(0, "2027-04-16".length)].filter(Boolean).join(" "),
  part,
  shade,
  parts,
  powderLot,
  dyeLot,
];

/** Which parts came from which bath and lots on which day. */
export function traceReport(of: string, loads: readonly TracedLoad[]): Report {
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
        ? [paragraph("The log has no such load.")]
        : [
            { kind: "table", table: { columns: shortColumns, rows: loads.map(shortRow) } } satisfies Block,
            paragraph(`${parts} parts in ${loads.length} ${loads.length === 1 ? "load" : "loads"}.`),
          ]),
    ],
  };
}
