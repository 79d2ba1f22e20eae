import type { BathWear } from "../../core/plan/wear-model.js";
import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { type Block, paragraph } from "../report.js";
import { percent } from "../words/amounts.js";
import { measuredDye } from "../words/dye.js";
import { ownLife } from "./life-sentence.js";

/** Where the dye of this batch went, and where that of a whole life goes. */
export function dyeBlocks(bath: BathWear): Block[] {
  const { dyeBalance, dyeFate } = bath;
  const life = ownLife(bath).dyeFate;
  const kind = kindWith(dyeBalance, "start");
  const amount = (of: "start" | "added" | "takenUp" | "draggedOut" | "left"): string =>
    measuredDye(kind, figureOfDye(dyeBalance, of));
  const row = (
    what: string,
    of: "takenUp" | "draggedOut" | "left",
    share: "onPartsShare" | "rinsedShare" | "leftShare",
  ): string[] => [what, amount(of), percent(dyeFate[share]), percent(life[share])];
  const added = figureOfDye(dyeBalance, "added") > 0 ? ` and ${amount("added")} topped up` : "";
  return [
    paragraph(`In this batch: ${amount("start")} at the start${added}.`),
    {
      kind: "table",
      table: {
        columns: [
          { key: "what", title: "" },
          { key: "amount", title: "this batch", align: "right" },
          { key: "share", title: "share", align: "right" },
          { key: "life", title: "whole life", align: "right" },
        ],
        rows: [
          row("on the parts", "takenUp", "onPartsShare"),
          row("rinsed away", "draggedOut", "rinsedShare"),
          row("left at the end", "left", "leftShare"),
        ],
      },
    },
  ];
}
