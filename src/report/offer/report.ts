import type { Offer } from "../../core/offer/offer-model.js";
import { type Block, paragraph, type Report } from "../report.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { sentence } from "../words/sentence.js";
import { colourBlocks } from "./colour-blocks.js";
import { constraintBlocks, paysBlocks } from "./pays-blocks.js";
import { priceBlocks } from "./price-blocks.js";
import { priceTable, rowRecord } from "./rows.js";

/** What to sell, in every format. */
export function offerReport(offer: Offer): Report {
  const { rows, notCounted, assumptions, cautions } = offer;
  const assumed: Block[] =
    assumptions.length === 0
      ? []
      : [
          { kind: "heading", level: 2, text: "Assumed, not measured" },
          { kind: "list", items: assumptions.map(({ message }) => sentence(message)) },
        ];
  return {
    name: "offer",
    data: { ...offer, rows: rows.map(rowRecord) },
    rows: withCautions(priceTable(offer), cautions),
    lines: rows.map(rowRecord),
    blocks: [
      { kind: "heading", level: 1, text: `Offer of ${offer.batch}` },
      ...colourBlocks(offer),
      ...priceBlocks(offer),
      ...paysBlocks(offer),
      ...constraintBlocks(offer),
      ...(notCounted.length > 0
        ? [paragraph(`Not given, so counted as nothing: ${notCounted.join("; ")}.`)]
        : []),
      ...assumed,
      cautionLine(),
    ],
  };
}
