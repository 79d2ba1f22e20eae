import { mapped } from "../../core/mapped.js";
import type { BatchWear } from "../../core/plan/wear-model.js";
import { type Block, paragraph, type Report } from "../report.js";
import { footnote } from "../words/assumed.js";
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
  const assumed: readonly Block[] =
    assumptions.length === 0
      ? []
      : [
          { kind: "heading", level: 2, text: "Assumed, not measured" },
          { kind: "list", items: mapped(assumptions, ({ message }) => `${message}.`) },
        ];
  return {
    name: "bath",
    data: { ...wear, cautions: [shortCaution] },
    rows: withCautions(wearRows(wear), [shortCaution]),
    ...(picture.length === 0 ? {} : { picture }),
    blocks: [
      { kind: "heading", level: 1, text: `Bath wear ${batch}${date === null ? "" : `, ${date}`}` },
      ...(rests === null ? [] : [paragraph(rests)]),
      ...drawn.flatMap(({ bath, plot }) => bathBlocks(bath, plot, currency)),
      ...assumed,
      cautionLine(),
    ],
  };
}
