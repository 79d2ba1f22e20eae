import { mapped } from "../../core/mapped.js";
import type { BatchWear } from "../../core/plan/wear-model.js";
import { paragraph, type Report } from "../report.js";
import { assumedBlocks, assumedRecords, footnote } from "../words/assumed.js";
import { cautionLine, shortCaution, withCautions } from "../words/cautions.js";
import { bathBlocks } from "./bath-blocks.js";
import { lifePlot } from "./life-plot.js";
import { wearRows } from "./rows.js";

/** How the baths of a batch wear, in every format. */
export function bathReport(wear: BatchWear): Report {
  const { batch, date, currency, baths, assumptions } = wear;
  const drawn = mapped(baths, (bath) => ({ bath, plot: lifePlot(bath) }));
  const picture = drawn.flatMap(({ plot }) => plot ?? []);
  const rests = footnote([...new Set(baths.flatMap(({ restsOnAssumed }) => restsOnAssumed))]);
  return {
    name: "bath",
    data: { ...wear, assumptions: assumedRecords(assumptions), cautions: [shortCaution] },
    rows: withCautions(wearRows(wear), [shortCaution]),
    ...(picture.length === 0 ? {} : { picture }),
    blocks: [
      { kind: "heading", level: 1, text: `Bath wear ${batch}${date === null ? "" : `, ${date}`}` },
      ...(rests === null ? [] : [paragraph(rests)]),
      ...drawn.flatMap(({ bath, plot }) => bathBlocks(bath, plot, currency)),
      ...assumedBlocks(assumptions),
      cautionLine(),
    ],
  };
}
