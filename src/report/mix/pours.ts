import type { Block } from "../report.js";
import { isNothing } from "../words/amounts.js";

/** One thing to do at the tank: a word and an amount with its unit. */
export interface Pour {
  readonly what: string;
  readonly amount: string;
}

/** Things to pour, numbered in the order in which they go in; what comes to nothing is left out. */
export const pourTable = (pours: readonly Pour[], title: string): Block => ({
  kind: "table",
  table: {
    columns: [
      { key: "step", title: "", digits: String },
      { key: "what", title },
      { key: "amount", title: "amount", align: "right", tone: "strong" },
    ],
    rows: pours
      .filter(({ amount }) => !isNothing(amount))
      .map(({ what, amount }, i) => [i + 1, what, amount]),
  },
});
