import type { Caution } from "../../core/plan/advice/cautions.js";
import { type Block, paragraph } from "../report.js";
import type { Table } from "../table.js";

/** What short answers say instead of all cautions. */
export const shortCaution: Caution = {
  code: "see-plan",
  text: "Amounts only: hot liquor scalds, its vapour, electricity near water and spent dye need care. dipwright plan lists the cautions; local rules, the supplier's data sheet and licensed practice come first.",
};

/** The cautions of a short answer, in one line. */
export const cautionLine = (): Block => paragraph(shortCaution.text);

/** A table with a last column `cautions` that holds them all in the first row: CSV carries them too. */
export const withCautions = (table: Table, cautions: readonly Caution[]): Table => ({
  columns: [...table.columns, { key: "cautions", title: "cautions" }],
  rows: table.rows.map((row, i) => [...row, i === 0 ? cautions.map(({ text }) => text).join(" ") : null]),
});
