import type { Caution } from "../../core/plan/advice/cautions.js";
import type { Block } from "../report.js";
import type { Table } from "../table.js";

/** Cautions at the foot of a report for people. */
export const cautionBlocks = (cautions: readonly Caution[]): Block[] =>
  cautions.length === 0
    ? []
    : [
        { kind: "heading", level: 2, text: "Cautions" },
        { kind: "list", items: cautions.map(({ text }) => text) },
      ];

/** A table with a last column `cautions` that holds them all in the first row: CSV carries them too. */
export const withCautions = (table: Table, cautions: readonly Caution[]): Table => ({
  columns: [...table.columns, { key: "cautions", title: "cautions" }],
  rows: table.rows.map((row, i) => [...row, i === 0 ? cautions.map(({ text }) => text).join(" ") : null]),
});
