import type { BathWear } from "../../core/plan/wear-model.js";
import type { Plot } from "../plot/plot.js";
import { type Block, paragraph } from "../report.js";
import { degrees } from "../words/amounts.js";
import { mark } from "../words/assumed.js";
import { coverBlocks } from "./cover-blocks.js";
import { drainText } from "./drain-text.js";
import { dyeBlocks } from "./dye-blocks.js";
import { energyBlocks } from "./energy-blocks.js";
import { lifeBlocks } from "./life-blocks.js";
import { lifeSentence } from "./life-sentence.js";
import { steadyOfMix, steadyText } from "./steady-text.js";

/** A piece of a bath's report under its heading; nothing where there is nothing to say. */
const titled = (text: string, blocks: readonly Block[]): readonly Block[] =>
  blocks.length === 0 ? [] : [{ kind: "heading", level: 2, text }, ...blocks];

const said = (text: string | null): readonly Block[] => (text === null ? [] : [paragraph(text)]);

/** One bath: how long it lasts, what keeps it steady, where dye and heat go. */
export function bathBlocks(bath: BathWear, plot: Plot | null, currency: string | null): Block[] {
  const { dye, tank, celsius, steadyTopUp, longerDrain, restsOnAssumed } = bath;
  const m = mark(restsOnAssumed);
  return [
    { kind: "heading", level: 1, text: `${dye} in tank ${tank}, ${degrees(celsius)}` },
    paragraph(lifeSentence(bath)),
    ...titled(`Life of a fresh bath under each topUp${m}`, [
      ...lifeBlocks(bath, currency),
      ...(plot === null ? [] : [{ kind: "plot", plot } as const]),
    ]),
    ...titled(`Steady top-up${m}`, said(steadyTopUp === null ? steadyOfMix(bath) : steadyText(steadyTopUp))),
    ...titled(`Where the dye goes${m}`, dyeBlocks(bath)),
    ...titled(`Where the heat goes${m}`, energyBlocks(bath)),
    ...titled("Lid and covers", coverBlocks(bath.heat)),
    ...titled(`Longer drain${m}`, said(longerDrain && drainText(longerDrain, currency))),
  ];
}
