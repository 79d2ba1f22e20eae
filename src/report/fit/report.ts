import type { Report } from "../report.js";
import { curvePlot } from "./curve.js";
import { fitData } from "./data.js";
import { type FitFacts, readingsSaid } from "./facts.js";
import { sentences } from "./sentences.js";
import { constantsTable, fitRows, lawsTable } from "./tables.js";

/** Uptake laws fitted to readings, as a report. */
export function fitReport(facts: FitFacts): Report {
  const { fits } = facts;
  const picture = curvePlot(facts);
  return {
    name: "fit",
    data: fitData(facts),
    rows: fitRows(facts),
    blocks: [
      { kind: "heading", level: 1, text: `${readingsSaid(facts)} over time: ${fits.law} law` },
      { kind: "paragraph", text: sentences(facts) },
      { kind: "table", table: constantsTable(facts) },
      { kind: "plot", plot: picture },
      { kind: "heading", level: 2, text: `All laws on the same ${fits.points} readings (* the one taken)` },
      { kind: "table", table: lawsTable(facts) },
    ],
    picture: [picture],
  };
}
