import type { Offer } from "../../core/offer/offer-model.js";
import type { Report } from "../report.js";
import { assumedBlocks, assumedRecords, notCountedBlocks } from "../words/assumed.js";
import { cautionLine, withCautions } from "../words/cautions.js";
import { colourBlocks } from "./colour-blocks.js";
import { constraintBlocks, paysBlocks } from "./pays-blocks.js";
import { priceBlocks } from "./price-blocks.js";
import { priceTable, rowRecord } from "./rows.js";

/** What to sell, in every format. */
export function offerReport(offer: Offer): Report {
  const { rows, notCounted, assumptions, cautions } = offer;
  return {
    name: "offer",
    data: { ...offer, assumptions: assumedRecords(assumptions), rows: rows.map(rowRecord) },
    rows: withCautions(priceTable(offer), cautions),
    blocks: [
      { kind: "heading", level: 1, text: `Offer of ${offer.batch}` },
      ...colourBlocks(offer),
      ...priceBlocks(offer),
      ...paysBlocks(offer),
      ...constraintBlocks(offer),
      ...notCountedBlocks(notCounted),
      ...assumedBlocks(assumptions),
      cautionLine(),
    ],
  };
}
